using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Nesting.Effort;
using PlankFit.Nesting.Shapes;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting.Model;

/// <summary>
/// Tapered pieces head to tail: two of them side by side, the wide end of one beside the narrow end of the other, fill a strip narrower than both are wide together.
/// They are laid in rows as one thing.
/// </summary>
internal static class HeadToTailPairs
{
    /// <summary>A piece whose width falls by this part between its ends is tapered.</summary>
    private const double Tapered = 0.12;

    /// <summary>A pair must be narrower than its pieces in lanes of their own by this part.</summary>
    private const double Gain = 0.06;

    /// <summary>A pair must fill this part of its own strip.</summary>
    private const double Fills = 0.72;

    /// <summary>An edge is laid along the board where that turns the grain by no more than this, degrees (a proposal, no source).</summary>
    private const double MostTiltDegrees = 3;

    /// <summary>So many partners of each piece are kept, those that fill best.</summary>
    private const int Partners = 3;
    private const int MostPieces = 60;

    /// <summary>One beside the other at these parts of what their lengths differ by.</summary>
    private static readonly ImmutableArray<double> Beside = [0, 0.25, 0.5, 0.75, 1];

    /// <param name="items">Single pieces.</param>
    /// <param name="widthsMm">Of the boards, as far as they may be used.</param>
    public static ImmutableArray<NestItem> Of(
        ImmutableArray<NestItem> items,
        double kerfMm,
        IReadOnlyList<double> widthsMm,
        Patience patience
    )
    {
        (NestItem Item, int Index)[] tapered = items
            .Select((item, i) => (Item: item, Index: i))
            .Where(t => t.Item.Copies[0].MayTurnEnd && Taper(t.Item.Copies[0]) > Tapered)
            .Take(MostPieces)
            .ToArray();
        var pairs = new List<(int A, int B, NestItem Pair, double Filled)>();
        foreach ((NestItem Item, int Index) a in tapered)
        {
            foreach ((NestItem Item, int Index) b in tapered.Where(b => b.Index >= a.Index))
            {
                if ((a.Index == b.Index && a.Item.Count < 2) || patience.IsOver)
                {
                    continue;
                }

                ImmutableArray<int> sorts = [.. a.Item.Sorts.Intersect(b.Item.Sorts)];
                if (!sorts.IsEmpty && Best(a.Item.Copies[0], b.Item.Copies[0], kerfMm) is { } laid)
                {
                    double area = a.Item.AreaMm2 + b.Item.AreaMm2,
                        apart = a.Item.HeightMm + b.Item.HeightMm + kerfMm,
                        high = laid[0].Shape.HeightMm,
                        filled = area / (high * laid[0].Shape.LengthMm);
                    // Of use only where some board takes the pair and not its pieces in lanes of their own.
                    if (
                        widthsMm.Any(w => high <= w && apart > w)
                        && high <= (1 - Gain) * apart
                        && filled >= Fills
                    )
                    {
                        pairs.Add(
                            (
                                a.Index,
                                b.Index,
                                new([], [a.Index, b.Index], laid, sorts, area),
                                filled
                            )
                        );
                    }
                }
            }
        }

        return
        [
            .. tapered
                .SelectMany(t =>
                    pairs
                        .Where(p => p.A == t.Index || p.B == t.Index)
                        .OrderByDescending(p => p.Filled)
                        .Take(Partners)
                )
                .DistinctBy(p => (p.A, p.B))
                .OrderBy(p => (p.A, p.B))
                .Select(p => p.Pair),
        ];
    }

    /// <summary>The narrowest way to lay two pieces side by side, and its half turn; null where no way is of use.</summary>
    private static ImmutableArray<ItemPose>? Best(SawPiece a, SawPiece b, double kerfMm)
    {
        ItemPose? best = null;
        double least = double.PositiveInfinity;
        foreach (bool turnA in new[] { false, true })
        {
            foreach (bool turnB in new[] { false, true })
            {
                if (IsWideAtLeft(a, turnA) == IsWideAtLeft(b, turnB))
                {
                    continue;
                }

                foreach (PiecePose low in Laid(a, turnA, lower: true))
                {
                    foreach (PiecePose high in Laid(b, turnB, lower: false))
                    {
                        ItemPose pose = Beneath(a, low, b, high, kerfMm, out double room);
                        if (room < least)
                        {
                            (best, least) = (pose, room);
                        }
                    }
                }
            }
        }

        return best is null ? null : [best, ItemsOf.HalfTurn([a, b], best)];
    }

    /// <summary>One piece above the other as they are, a kerf between.</summary>
    public static ItemPose Abreast(SawPiece a, SawPiece b, double kerfMm) =>
        Beneath(a, new(false, false, 0, default), b, new(false, false, 0, default), kerfMm, out _);

    /// <summary>Straight, and with its lower or upper edge along the board.</summary>
    private static IEnumerable<PiecePose> Laid(SawPiece piece, bool turned, bool lower)
    {
        yield return new(turned, false, 0, default);
        (_, _, double low, double high) = Edges(piece, turned);
        double tilt = -(lower ? low : high);
        if (Math.Abs(tilt) <= MostTiltDegrees)
        {
            yield return new(turned, false, tilt, default);
        }
    }

    /// <summary>The second piece above the first, a kerf between, where both together take the least room.</summary>
    private static ItemPose Beneath(
        SawPiece a,
        PiecePose low,
        SawPiece b,
        PiecePose high,
        double kerfMm,
        out double room
    )
    {
        ImmutableArray<Vec2> one = low.Of(a, default).Outline,
            other = high.Of(b, default).Outline;
        RowShape below = RowShape.Of([Upright(one)]),
            above = RowShape.Of([Upright(other)]);
        double x1 = one.Min(p => p.X),
            x2 = other.Min(p => p.X),
            y1 = one.Min(p => p.Y),
            y2 = other.Min(p => p.Y);
        // Upright, a piece's length is its height: what is beside is above.
        double differ = below.HeightMm - above.HeightMm;
        ItemPose? best = null;
        room = double.PositiveInfinity;
        foreach (double part in Beside)
        {
            double dx = part * differ;
            double dy = Pitch.Of(below, Moved(above, dx), kerfMm);
            var shift = new Vec2(x1 - x2 + dx, y1 - y2 + dy);
            ItemPose pose = ItemsOf.Pose([a, b], [low, high with { Shift = shift }], 1);
            double takes = pose.Shape.HeightMm * pose.Shape.LengthMm;
            if (takes < room)
            {
                (best, room) = (pose, takes);
            }
        }

        return best!;
    }

    /// <summary>x and y exchanged, and counter-clockwise again.</summary>
    private static ImmutableArray<Vec2> Upright(ImmutableArray<Vec2> outline) =>
        [.. outline.Reverse().Select(p => new Vec2(p.Y, p.X))];

    private static RowShape Moved(RowShape shape, double y)
    {
        var by = new Vec2(0, y);
        RowEdge Move(RowEdge e) => new(e.A + by, e.B + by);
        return shape with
        {
            RightSide = [.. shape.RightSide.Select(Move)],
            LeftSide = [.. shape.LeftSide.Select(Move)],
        };
    }

    private static bool IsWideAtLeft(SawPiece piece, bool turned)
    {
        (double left, double right, _, _) = Edges(piece, turned);
        return left > right;
    }

    private static double Taper(SawPiece piece)
    {
        (double left, double right, _, _) = Edges(piece, false);
        return Math.Abs(left - right) / Math.Max(left, right);
    }

    /// <summary>Width near both ends, and the slopes of the lower and the upper edge between, degrees.</summary>
    private static (double Left, double Right, double Low, double High) Edges(
        SawPiece piece,
        bool turned
    )
    {
        ImmutableArray<Vec2> outline = new LaidPiece(piece, turned, false, 0, default).Outline;
        double x0 = outline.Min(p => p.X),
            x1 = outline.Max(p => p.X),
            a = x0 + (0.3 * (x1 - x0)),
            b = x0 + (0.7 * (x1 - x0));
        (double lowA, double highA) = At(outline, a);
        (double lowB, double highB) = At(outline, b);
        double Slope(double from, double to) => Math.Atan2(to - from, b - a) * 180 / Math.PI;
        return (highA - lowA, highB - lowB, Slope(lowA, lowB), Slope(highA, highB));
    }

    /// <summary>Where an upright line meets an outline, lowest and highest.</summary>
    private static (double Low, double High) At(ImmutableArray<Vec2> outline, double x)
    {
        double low = double.PositiveInfinity,
            high = double.NegativeInfinity;
        for (int i = 0; i < outline.Length; i++)
        {
            Vec2 p = outline[i],
                q = outline[(i + 1) % outline.Length];
            if ((p.X - x) * (q.X - x) <= 0 && p.X != q.X)
            {
                double y = p.Y + ((x - p.X) / (q.X - p.X) * (q.Y - p.Y));
                (low, high) = (Math.Min(low, y), Math.Max(high, y));
            }
        }

        return (low, high);
    }
}
