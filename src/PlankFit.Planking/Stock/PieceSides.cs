using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Stock;

/// <summary>Which way a side of a piece looks as it lies.</summary>
internal enum SideKind
{
    /// <summary>Along the grain, towards the marked edge.</summary>
    Low,

    /// <summary>An end that looks along the board, away from its beginning.</summary>
    Far,

    /// <summary>Along the grain, away from the marked edge.</summary>
    High,

    /// <summary>An end that looks back to the beginning.</summary>
    Near,
}

/// <summary>A side of a piece, straight or nearly so.</summary>
/// <param name="Points">Of the outline: an edge from the beginning on, an end from the marked edge on.</param>
/// <param name="OffMm">The most that they leave their chord.</param>
/// <param name="OutMm">The most that they leave it outwards.</param>
internal sealed record PieceSide(
    SideKind Kind,
    ImmutableArray<Vec2> Points,
    double OffMm,
    double OutMm
)
{
    public Vec2 From => Points[0];

    public Vec2 To => Points[^1];

    public Vec2 Direction => (To - From).Unit();

    /// <summary>Away from the wood.</summary>
    public Vec2 Outward =>
        Kind is SideKind.Near or SideKind.High ? Direction.Left() : -1 * Direction.Left();

    /// <summary>A point of the straight line along the chord that the whole side lies within.</summary>
    public Vec2 Foot => From + (OutMm * Outward);
}

/// <summary>The outline of a piece taken apart into the sides that a saw makes.</summary>
internal static class PieceSides
{
    /// <param name="outline">As it lies, counter-clockwise, grain along x.</param>
    public static ImmutableArray<PieceSide> Of(
        ImmutableArray<Vec2> outline,
        SawTolerances tolerances
    )
    {
        int[] corners = Corners(outline, tolerances.StraightMm);
        var runs = new List<Run>();
        for (int i = 0; i < corners.Length; i++)
        {
            int from = corners[i],
                to = corners[(i + 1) % corners.Length];
            Vec2 side = outline[to] - outline[from];
            if (side.Norm > tolerances.LeastMm)
            {
                runs.Add(new(Kind(side, tolerances.RipDegrees), from, to, side, side));
            }
        }

        Join(outline, runs, tolerances);
        return [.. runs.Select(r => Side(outline, r))];
    }

    private readonly record struct Run(SideKind Kind, int First, int Last, Vec2 Begins, Vec2 Ends);

    private static SideKind Kind(Vec2 side, double ripDegrees)
    {
        bool along = Math.Abs(side.Y) <= Math.Abs(side.X) * Math.Tan(ripDegrees * Math.PI / 180);
        return along
            ? side.X > 0
                ? SideKind.Low
                : SideKind.High
            : side.Y > 0
                ? SideKind.Far
                : SideKind.Near;
    }

    /// <summary>
    /// Neighbouring stretches that look the same way are one side where they turn by little; and whichever way they look where they meet in a hollow, since a
    /// straight cut along either would go into the wood beyond it: there a saw follows the line.
    /// </summary>
    private static void Join(ImmutableArray<Vec2> outline, List<Run> runs, SawTolerances tolerances)
    {
        for (int i = 0; i < runs.Count && runs.Count > 2; )
        {
            int next = (i + 1) % runs.Count;
            Run a = runs[i],
                b = runs[next];
            double turn = Turn(a.Ends, b.Begins);
            bool alike = a.Kind == b.Kind && Math.Abs(turn) <= tolerances.CornerDegrees;
            if (!alike && turn >= 0)
            {
                i++;
                continue;
            }

            SideKind kind =
                a.Kind == b.Kind
                    ? a.Kind
                    : Kind(outline[b.Last] - outline[a.First], tolerances.RipDegrees);
            runs[i] = new(kind, a.First, b.Last, a.Begins, b.Ends);
            runs.RemoveAt(next);
            if (next < i)
            {
                i--;
            }
        }
    }

    private static double Turn(Vec2 a, Vec2 b) => Math.Atan2(a.Cross(b), a.Dot(b)) * 180 / Math.PI;

    private static PieceSide Side(ImmutableArray<Vec2> outline, Run run)
    {
        ImmutableArray<Vec2>.Builder points = ImmutableArray.CreateBuilder<Vec2>();
        for (int i = run.First; ; i = (i + 1) % outline.Length)
        {
            points.Add(outline[i]);
            if (i == run.Last)
            {
                break;
            }
        }

        // Round the outline, wood lies to the left.
        Vec2 a = points[0],
            right = -1 * (points[^1] - a).Unit().Left();
        double off = points.Max(p => Math.Abs((p - a).Dot(right))),
            outwards = points.Max(p => (p - a).Dot(right));
        if (run.Kind is SideKind.Near or SideKind.High)
        {
            points.Reverse();
        }

        return new(run.Kind, points.ToImmutable(), off, outwards);
    }

    /// <summary>Indices of the vertices that are left when all within the tolerance of a straight line are taken out, two true corners first.</summary>
    private static int[] Corners(ImmutableArray<Vec2> outline, double withinMm)
    {
        // The two vertices furthest apart along the grain are always corners, wherever the outline begins.
        int n = outline.Length,
            start = Enumerable.Range(0, n).MinBy(i => outline[i].X);
        Vec2[] turned = [.. Enumerable.Range(0, n).Select(i => outline[(start + i) % n])];
        ImmutableArray<Vec2> kept = Thinning.Closed(turned, withinMm);
        var found = new List<int>(kept.Length);
        for (int i = 0, k = 0; i < n && k < kept.Length; i++)
        {
            if (turned[i] == kept[k])
            {
                found.Add((start + i) % n);
                k++;
            }
        }

        return [.. found];
    }
}
