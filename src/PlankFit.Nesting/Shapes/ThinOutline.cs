using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Nesting.Shapes;

/// <summary>An outline with fewer vertices, and how far it may lie from the whole one.</summary>
/// <param name="WithinMm">No point of the whole outline is further from this one.</param>
internal sealed record ThinOutline(ImmutableArray<Vec2> Points, double WithinMm)
{
    /// <summary>
    /// Douglas and Peucker's thinning (1973, from memory) of a closed outline between its extremes along x. Pitches are then worked on a dozen
    /// vertices in place of hundreds, and the distance given up is added to the kerf.
    /// </summary>
    /// <param name="withinMm">The most that may be given up.</param>
    public static ThinOutline Of(IReadOnlyList<Vec2> outline, double withinMm)
    {
        int n = outline.Count,
            left = 0,
            right = 0;
        for (int i = 1; i < n; i++)
        {
            left = outline[i].X < outline[left].X ? i : left;
            right = outline[i].X > outline[right].X ? i : right;
        }

        var kept = new SortedSet<int> { left, right };
        double worst = Math.Max(
            Between(outline, left, right, withinMm, kept),
            Between(outline, right, left, withinMm, kept)
        );
        return new([.. kept.Select(i => outline[i])], worst);
    }

    /// <summary>Keeps what is needed on the way round from one vertex to another; the most that was given up.</summary>
    private static double Between(
        IReadOnlyList<Vec2> outline,
        int from,
        int to,
        double withinMm,
        SortedSet<int> kept
    )
    {
        int n = outline.Count,
            furthest = -1;
        double most = 0;
        for (int i = (from + 1) % n; i != to; i = (i + 1) % n)
        {
            double d = Distance(outline[i], outline[from], outline[to]);
            if (d > most)
            {
                (furthest, most) = (i, d);
            }
        }

        if (most <= withinMm)
        {
            return most;
        }

        kept.Add(furthest);
        return Math.Max(
            Between(outline, from, furthest, withinMm, kept),
            Between(outline, furthest, to, withinMm, kept)
        );
    }

    /// <summary>From a point to a straight line between two others, not to its carrier.</summary>
    public static double Distance(Vec2 p, Vec2 a, Vec2 b)
    {
        Vec2 ab = b - a;
        double length2 = ab.Dot(ab);
        double t = length2 > 0 ? Math.Clamp((p - a).Dot(ab) / length2, 0, 1) : 0;
        return (p - a - (t * ab)).Norm;
    }
}
