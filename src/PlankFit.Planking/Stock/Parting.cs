using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>
/// The cut between what lies before and what lies behind it, where no end can be carried across the lane because a corner of something is in its way: square to
/// the shortest way between their convex hulls. Where any straight kerf parts the two, this one does.
/// </summary>
internal static class Parting
{
    /// <summary>Less of a way than this along the board is none.</summary>
    private const double AlongX = 1e-6;

    /// <param name="before">In order along the lane, and so <paramref name="after"/>.</param>
    /// <param name="mayRip">It may run along the grain, or nearly so.</param>
    /// <returns>Null where it would enter something.</returns>
    public static LaneEnd? Between(
        ImmutableArray<LanePiece> before,
        ImmutableArray<LanePiece> after,
        bool mayRip,
        IReadOnlyCollection<LanePiece> all,
        BoardFrame frame,
        SawnLane lane,
        int number,
        double kerf,
        SawTolerances tolerances
    )
    {
        (Vec2 a, Vec2 b) = Nearest(Hull(before), Hull(after));
        if (a.ChordTo(b) <= 0)
        {
            return null;
        }

        Vec2 way = (b - a).Unit();
        double least = mayRip ? 0 : Math.Sin(tolerances.RipDegrees * Math.PI / 180);
        if (way.X <= least || Math.Abs(way.X) < AlongX)
        {
            // Where ends are long and sharp the shortest way is no crosscut, and a square one may clear them as well.
            way = new(1, 0);
            a = new(before.SelectMany(q => q.Hull).Max(p => p.X), lane.LowMm);
            b = new(after.SelectMany(q => q.Hull).Min(p => p.X), lane.LowMm);
        }

        // What is more than a kerf is shared between the two.
        Vec2 along = way.Left(),
            on = a + (Math.Max(0, (b - a).Dot(way) - kerf) / 2 * way),
            slope = along / along.Y,
            from = LaneEnd.OnBoard(frame, on, slope, lane.LowMm),
            to = LaneEnd.OnBoard(frame, on, slope, lane.HighMm);
        if (
            before.Any(q => LaneEnd.Where(q, on, way, kerf) != -1)
            || after.Any(q => LaneEnd.Where(q, on, way, kerf) != 1)
        )
        {
            return null;
        }

        ILookup<int, PieceId> where = all.ToLookup(q => LaneEnd.Where(q, on, way, kerf), q => q.Id);
        SawCut across = new(
            0,
            CutKind.Parting,
            number,
            before[^1].Id,
            after[0].Id,
            from,
            to,
            false,
            0,
            kerf,
            [from, to]
        );
        // Where it may not be carried to the lane's edges, as far as what it parts.
        double[] heights = [.. before.Concat(after).SelectMany(p => p.Hull).Select(p => p.Y)];
        Vec2 low = LaneEnd.OnBoard(frame, on, slope, heights.Min()),
            high = LaneEnd.OnBoard(frame, on, slope, heights.Max());
        return new(
            across with
            {
                From = low,
                To = high,
                Line = [low, high],
            },
            across,
            [.. where[-1]],
            [.. where[1]]
        );
    }

    private static ImmutableArray<Vec2> Hull(ImmutableArray<LanePiece> pieces) =>
        ConvexHull.Of(pieces.SelectMany(p => p.Hull));

    /// <summary>The shortest way between two outlines: from a corner of one to a side of the other.</summary>
    private static (Vec2 A, Vec2 B) Nearest(ImmutableArray<Vec2> a, ImmutableArray<Vec2> b)
    {
        (Vec2 A, Vec2 B) best = (a[0], b[0]);
        foreach (Vec2 p in a)
        {
            Vec2 q = Foot(b, p);
            best = p.ChordTo(q) < best.A.ChordTo(best.B) ? (p, q) : best;
        }

        foreach (Vec2 q in b)
        {
            Vec2 p = Foot(a, q);
            best = p.ChordTo(q) < best.A.ChordTo(best.B) ? (p, q) : best;
        }

        return best;
    }

    private static Vec2 Foot(ImmutableArray<Vec2> outline, Vec2 p)
    {
        Vec2 best = outline[0];
        for (int i = 0; i < outline.Length; i++)
        {
            Vec2 from = outline[i],
                side = outline[(i + 1) % outline.Length] - from;
            double length2 = side.Dot(side),
                t = length2 > 0 ? Math.Clamp((p - from).Dot(side) / length2, 0, 1) : 0;
            Vec2 foot = from + (t * side);
            best = foot.ChordTo(p) < best.ChordTo(p) ? foot : best;
        }

        return best;
    }
}
