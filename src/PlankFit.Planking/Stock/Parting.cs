using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>
/// The cut between two neighbours neither of whose ends can be carried across the lane, because a corner of the other is in its way: square to the shortest
/// way from one to the other, which is a kerf at least, so that for shapes that bulge only it always is clear.
/// </summary>
internal static class Parting
{
    /// <returns>Null where it would run along the grain, or enter something.</returns>
    public static LaneEnd? Between(
        LanePiece before,
        LanePiece after,
        IReadOnlyCollection<LanePiece> part,
        BoardFrame frame,
        SawnLane lane,
        int number,
        double kerf,
        SawTolerances tolerances
    )
    {
        (Vec2 a, Vec2 b) = Nearest(before.Outline, after.Outline);
        if (a.ChordTo(b) <= 0)
        {
            return null;
        }

        Vec2 way = (b - a).Unit(),
            along = way.Left();
        if (way.X <= Math.Sin(tolerances.RipDegrees * Math.PI / 180))
        {
            return null;
        }

        // What is more than a kerf is shared between the two.
        Vec2 on = a + (Math.Max(0, a.ChordTo(b) - kerf) / 2 * way),
            slope = along / along.Y,
            from = LaneEnd.OnBoard(frame, on, slope, lane.LowMm),
            to = LaneEnd.OnBoard(frame, on, slope, lane.HighMm);
        ILookup<int, string> where = part.ToLookup(
            q => LaneEnd.Where(q, on, way, kerf, tolerances.StraightMm),
            q => q.Id
        );
        if (where[0].Any() || !where[-1].Contains(before.Id) || !where[1].Contains(after.Id))
        {
            return null;
        }

        SawCut cut = new(
            0,
            CutKind.Parting,
            number,
            before.Id,
            after.Id,
            from,
            to,
            false,
            0,
            kerf,
            [from, to]
        );
        return new(cut, cut, [.. where[-1]], [.. where[1]]);
    }

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
