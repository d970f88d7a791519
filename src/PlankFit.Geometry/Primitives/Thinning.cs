using System.Collections.Immutable;

namespace PlankFit.Geometry.Primitives;

/// <summary>
/// Leaving out vertices that a straight line replaces to within a tolerance: each vertex left out lies within it of the chord that spans it
/// (Douglas and Peucker 1973, from memory). Kept vertices are not moved.
/// </summary>
public static class Thinning
{
    /// <param name="toleranceMm">The most that a vertex left out may lie off the chord.</param>
    public static ImmutableArray<Vec2> Open(IReadOnlyList<Vec2> points, double toleranceMm)
    {
        if (points.Count < 3)
        {
            return [.. points];
        }

        bool[] kept = new bool[points.Count];
        kept[0] = kept[^1] = true;
        Mark(points, 0, points.Count - 1, toleranceMm, kept);
        return [.. points.Where((_, i) => kept[i])];
    }

    /// <summary>A polygon whose first point is not repeated; its first vertex and the one furthest from it stay.</summary>
    public static ImmutableArray<Vec2> Closed(IReadOnlyList<Vec2> polygon, double toleranceMm)
    {
        if (polygon.Count < 4)
        {
            return [.. polygon];
        }

        List<Vec2> ring = [.. polygon, polygon[0]];
        int far = Enumerable.Range(0, polygon.Count).MaxBy(i => polygon[i].ChordTo(polygon[0]));
        bool[] kept = new bool[ring.Count];
        kept[0] = kept[far] = kept[^1] = true;
        Mark(ring, 0, far, toleranceMm, kept);
        Mark(ring, far, ring.Count - 1, toleranceMm, kept);
        ImmutableArray<Vec2> thinned = [.. polygon.Where((_, i) => kept[i])];
        // Never down to a line: a shape so small keeps all that it has.
        return thinned.Length >= 3 ? thinned : [.. polygon];
    }

    private static void Mark(
        IReadOnlyList<Vec2> points,
        int first,
        int last,
        double toleranceMm,
        bool[] kept
    )
    {
        Stack<(int First, int Last)> open = new([(first, last)]);
        while (open.TryPop(out (int First, int Last) span))
        {
            (int worst, double off) = Worst(points, span.First, span.Last);
            if (off > toleranceMm)
            {
                kept[worst] = true;
                open.Push((span.First, worst));
                open.Push((worst, span.Last));
            }
        }
    }

    private static (int Index, double OffMm) Worst(IReadOnlyList<Vec2> points, int first, int last)
    {
        Vec2 a = points[first],
            chord = points[last] - a;
        double length = chord.Norm,
            most = -1;
        int worst = first;
        for (int i = first + 1; i < last; i++)
        {
            Vec2 from = points[i] - a;
            // Past the chord's ends the distance is to the end, not to the line.
            double along = length > 0 ? from.Dot(chord) / length : 0,
                off = along < 0 || length == 0 ? from.Norm
                : along > length ? points[i].ChordTo(points[last])
                : Math.Abs(chord.Cross(from)) / length;
            if (off > most)
            {
                (most, worst) = (off, i);
            }
        }

        return (worst, most);
    }
}
