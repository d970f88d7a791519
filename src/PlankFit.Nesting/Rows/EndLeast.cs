using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Nesting.Model;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting.Rows;

/// <summary>
/// The least that each of a thing's two ends asks of a row, from the thing's middle on, its share of the kerf with it; and what more, at the least, where it is at the
/// row's end, which may be less than nought. By thing two numbers, its ends 0 and 1. No row is shorter than all of the first and the two least of the second together.
/// </summary>
internal static class EndLeast
{
    /// <summary>
    /// From the shapes alone. At a height that all things reach each has a chord, and chords in a row are a kerf apart: a row is no shorter than they are together.
    /// </summary>
    public static (double[] Half, double[] Beyond) OfShapes(
        ImmutableArray<NestItem> items,
        double kerfMm
    )
    {
        double height = items.Min(i => i.HeightMm) / 2;
        double[] half = new double[2 * items.Length];
        for (int i = 0; i < items.Length; i++)
        {
            half[2 * i] = half[(2 * i) + 1] =
                (items[i].Poses.Min(p => Chord(items[i], p, height)) + kerfMm) / 2;
        }

        double[] beyond = new double[half.Length];
        Array.Fill(beyond, -kerfMm / 2);
        return (half, beyond);
    }

    /// <summary>
    /// From all pitches: the halves h, so that h(E) + h(F) is never more than the distance of two middles where the ends E and F meet. An end that meets its own like,
    /// turned, asks for half of that distance; what any other end asks beyond both halves is divided evenly.
    /// </summary>
    /// <param name="pitches">By pose, all poses of all things in order, and by the one after it.</param>
    public static (double[] Half, double[] Beyond) OfPitches(
        ImmutableArray<NestItem> items,
        double[][] pitches
    )
    {
        ItemPose[] all = [.. items.SelectMany(i => i.Poses)];
        int[] own = [.. items.SelectMany((item, i) => item.Poses.Select(_ => i))];
        int[] right = [.. all.Select((p, i) => (2 * own[i]) + p.RightEnd)];
        int[] left = [.. all.Select((p, i) => (2 * own[i]) + (1 - p.RightEnd))];
        double Between(int p, int q) => pitches[p][q] - all[p].CentreMm + all[q].CentreMm;
        double[] reach = [.. Enumerable.Range(0, 2 * items.Length).Select(e => Reach(items, e))];
        double[] start = [.. reach.Select(_ => double.PositiveInfinity)];
        for (int from = 0, i = 0; i < items.Length; from += items[i].Poses.Length, i++)
        {
            for (int p = from; p < from + items[i].Poses.Length; p++)
            {
                for (int q = from; q < from + items[i].Poses.Length; q++)
                {
                    if (right[p] == left[q])
                    {
                        start[right[p]] = Math.Min(start[right[p]], Between(p, q));
                    }
                }
            }
        }

        for (int e = 0; e < start.Length; e++)
        {
            // Where turning is not allowed an end never meets its like: its own reach will do.
            start[e] = double.IsFinite(start[e]) ? start[e] / 2 : reach[e];
        }

        double[] spare = [.. reach.Select(_ => double.PositiveInfinity)];
        for (int p = 0; p < all.Length; p++)
        {
            int e = right[p];
            for (int q = 0; q < all.Length; q++)
            {
                int f = left[q];
                double between = Between(p, q);
                spare[e] = Math.Min(spare[e], between - start[e] - start[f]);
                spare[f] = Math.Min(spare[f], between - start[f] - start[e]);
            }
        }

        double[] half =
        [
            .. start.Select((s, e) => s + (double.IsFinite(spare[e]) ? spare[e] / 2 : 0)),
        ];
        return (half, [.. reach.Select((r, e) => r - half[e])]);
    }

    /// <summary>From an item's middle to its furthest point at that end, the least of all poses.</summary>
    private static double Reach(ImmutableArray<NestItem> items, int end) =>
        items[end / 2]
            .Poses.Min(p => p.RightEnd == end % 2 ? p.Shape.LengthMm - p.CentreMm : p.CentreMm);

    /// <summary>Of a thing's convex hull at a height, with ends left long sawn off as far as they may be.</summary>
    private static double Chord(NestItem item, ItemPose pose, double height)
    {
        double most = double.NegativeInfinity,
            least = double.PositiveInfinity;
        foreach ((Vec2 a, Vec2 b) in Edges(item, pose))
        {
            if ((a.Y - height) * (b.Y - height) <= 0 && a.Y != b.Y)
            {
                double x = a.X + ((height - a.Y) / (b.Y - a.Y) * (b.X - a.X));
                (least, most) = (Math.Min(least, x), Math.Max(most, x));
            }
        }

        return Math.Max(0, most - least);
    }

    private static IEnumerable<(Vec2 A, Vec2 B)> Edges(NestItem item, ItemPose pose)
    {
        if (!item.Copies.Any(c => c.LongEnds.Any(e => e.LeastMm < e.ByMm)))
        {
            return pose.Shape.RightSide.Concat(pose.Shape.LeftSide).Select(e => (e.A, e.B));
        }

        SawPiece piece = item.Copies[0];
        LaidPiece laid = pose.Laid[0].Of(piece, default) with
        {
            Sawn = piece.LongEnds.Aggregate(piece.Outline, (outline, end) => end.Least(outline)),
        };
        ImmutableArray<Vec2> hull = ConvexHull.Of(laid.Outline);
        return hull.Select((a, i) => (a, hull[(i + 1) % hull.Length]));
    }
}
