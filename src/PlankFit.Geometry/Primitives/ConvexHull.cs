using System.Collections.Immutable;

namespace PlankFit.Geometry.Primitives;

/// <summary>The convex hull of points of the plane (Andrew's monotone chain, 1979, from memory).</summary>
public static class ConvexHull
{
    /// <returns>Counter-clockwise from the leftmost, none of three in a line; fewer than three where the points are.</returns>
    public static ImmutableArray<Vec2> Of(IEnumerable<Vec2> points)
    {
        Vec2[] sorted = [.. points];
        Array.Sort(sorted, static (a, b) => a.X != b.X ? a.X.CompareTo(b.X) : a.Y.CompareTo(b.Y));
        int apart = 0;
        for (int i = 0; i < sorted.Length; i++)
        {
            if (i == 0 || sorted[i] != sorted[apart - 1])
            {
                sorted[apart++] = sorted[i];
            }
        }

        Span<Vec2> inOrder = sorted.AsSpan(0, apart);
        if (apart < 3)
        {
            return [.. inOrder];
        }

        List<Vec2> lower = Chain(inOrder);
        inOrder.Reverse();
        return [.. lower, .. Chain(inOrder)];
    }

    /// <summary>The lower side of points in order, or the upper one in reverse, without its last.</summary>
    private static List<Vec2> Chain(ReadOnlySpan<Vec2> sorted)
    {
        var chain = new List<Vec2>(sorted.Length);
        foreach (Vec2 p in sorted)
        {
            while (chain.Count > 1 && (chain[^1] - chain[^2]).Cross(p - chain[^1]) <= 0)
            {
                chain.RemoveAt(chain.Count - 1);
            }

            chain.Add(p);
        }

        chain.RemoveAt(chain.Count - 1);
        return chain;
    }
}
