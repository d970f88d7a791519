using System.Collections.Immutable;

namespace PlankFit.Geometry.Primitives;

/// <summary>The convex hull of points of the plane (Andrew's monotone chain, 1979, from memory).</summary>
public static class ConvexHull
{
    /// <returns>Counter-clockwise from the leftmost, none of three in a line; fewer than three where the points are.</returns>
    public static ImmutableArray<Vec2> Of(IEnumerable<Vec2> points)
    {
        Vec2[] sorted = [.. points.Distinct().OrderBy(p => p.X).ThenBy(p => p.Y)];
        if (sorted.Length < 3)
        {
            return [.. sorted];
        }

        return [.. Chain(sorted), .. Chain([.. sorted.Reverse()])];
    }

    /// <summary>The lower side of points in order, or the upper one in reverse, without its last.</summary>
    private static List<Vec2> Chain(Vec2[] sorted)
    {
        var chain = new List<Vec2>();
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
