using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Stock;

/// <summary>
/// The cut between what lies before and what lies behind it, where no end can be carried across the lane because a corner of something is in its way: square to
/// the shortest way between their convex hulls, or where that will not do, square to the lane, or along a side of either. Where any straight kerf parts the two, one of these does.
/// </summary>
internal static class Parting
{
    /// <param name="before">In order along the lane, and so <paramref name="after"/>.</param>
    /// <param name="mayRip">It may run along the grain, or nearly so: then it is sawn as an edge is.</param>
    /// <returns>Null where it would enter something.</returns>
    public static LaneEnd? Between(
        ImmutableArray<LanePiece> before,
        ImmutableArray<LanePiece> after,
        bool mayRip,
        IReadOnlyCollection<LanePiece> all,
        LaneAtSaw lane
    )
    {
        double kerf = lane.KerfMm;
        ImmutableArray<Vec2> behind = Hull(before),
            beyond = Hull(after);
        double least = Math.Sin(lane.Tolerances.RipDegrees * Math.PI / 180);
        foreach (Vec2 way in Ways(behind, beyond))
        {
            bool along = Math.Abs(way.X) <= least;
            if (along ? !mayRip : way.X < 0)
            {
                continue;
            }

            // What is more than a kerf is shared between the two.
            Vec2 a = behind.MaxBy(way.Dot),
                on = a + (Math.Max(0, beyond.Min(way.Dot) - a.Dot(way) - kerf) / 2 * way);
            if (
                before.Any(q => LaneEnd.Where(q, on, way, kerf) != -1)
                || after.Any(q => LaneEnd.Where(q, on, way, kerf) != 1)
            )
            {
                continue;
            }

            ILookup<int, PieceId> where = all.ToLookup(
                q => LaneEnd.Where(q, on, way, kerf),
                q => q.Id
            );
            (SawCut cut, SawCut across) = along
                ? Along(before, after, on, way, lane)
                : Across(before, after, on, way, lane);
            return new(cut, across, [.. where[-1]], [.. where[1]]);
        }

        return null;
    }

    /// <summary>Ways from one hull to another that a cut may be square to, the best first. Where the two touch, the shortest way has no direction, and a side of one has.</summary>
    private static IEnumerable<Vec2> Ways(ImmutableArray<Vec2> behind, ImmutableArray<Vec2> beyond)
    {
        (Vec2 a, Vec2 b) = Nearest(behind, beyond);
        if (a.ChordTo(b) > 0)
        {
            yield return (b - a).Unit();
        }

        // Where ends are long and sharp the shortest way is no crosscut, and a square one may clear them as well.
        yield return new(1, 0);
        foreach (
            Vec2 way in Outward(behind)
                .Concat(Outward(beyond).Select(w => -1 * w))
                .OrderByDescending(w => beyond.Min(w.Dot) - behind.Max(w.Dot))
        )
        {
            yield return way;
        }
    }

    private static IEnumerable<Vec2> Outward(ImmutableArray<Vec2> hull) =>
        hull.Select((p, i) => hull[(i + 1) % hull.Length] - p)
            .Where(side => side.Norm > 0)
            .Select(side => -1 * side.Unit().Left());

    private static (SawCut Cut, SawCut Across) Across(
        ImmutableArray<LanePiece> before,
        ImmutableArray<LanePiece> after,
        Vec2 on,
        Vec2 way,
        LaneAtSaw lane
    )
    {
        Vec2 along = way.Left(),
            slope = along / along.Y,
            from = LaneEnd.OnBoard(lane.Frame, on, slope, lane.Lane.LowMm),
            to = LaneEnd.OnBoard(lane.Frame, on, slope, lane.Lane.HighMm);
        SawCut across = SawCut.Straight(CutKind.Parting, from, to, lane.KerfMm) with
        {
            Lane = lane.Number,
            EndOf = before[^1].Id,
            BeginOf = after[0].Id,
        };
        // Where it may not be carried to the lane's edges, as far as what it parts.
        double[] heights = [.. before.Concat(after).SelectMany(p => p.Hull).Select(p => p.Y)];
        Vec2 low = LaneEnd.OnBoard(lane.Frame, on, slope, heights.Min()),
            high = LaneEnd.OnBoard(lane.Frame, on, slope, heights.Max());
        return (across with { From = low, To = high, Line = [low, high] }, across);
    }

    /// <summary>Between pieces that lie abreast, along the one before it, as far as what it parts.</summary>
    private static (SawCut Cut, SawCut Across) Along(
        ImmutableArray<LanePiece> before,
        ImmutableArray<LanePiece> after,
        Vec2 on,
        Vec2 way,
        LaneAtSaw lane
    )
    {
        Vec2 along = way.Left(),
            slope = along / along.X;
        double[] lengths = [.. before.Concat(after).SelectMany(p => p.Hull).Select(p => p.X)];
        // The lane lies by itself: where the line leaves it there is no wood.
        Vec2 At(double x)
        {
            Vec2 p = on + ((x - on.X) * slope);
            double y = Math.Clamp(p.Y, lane.Lane.LowMm, lane.Lane.HighMm);
            return y == p.Y ? p : new(on.X + ((y - on.Y) / slope.Y), y);
        }

        Vec2 from = At(lengths.Min()),
            to = At(lengths.Max());
        SawCut cut = SawCut.Straight(
            CutKind.Edge,
            from,
            to,
            way.Y > 0 ? lane.KerfMm : -lane.KerfMm
        ) with
        {
            Lane = lane.Number,
            EndOf = before.MaxBy(p => p.Hull.Max(way.Dot))!.Id,
        };
        return (cut, cut);
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
