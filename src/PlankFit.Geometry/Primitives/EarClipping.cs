using System.Collections.Immutable;

namespace PlankFit.Geometry.Primitives;

/// <summary>
/// A simple polygon in triangles, by cutting ears off (Meisters 1975, from memory), always the one whose new side is the shortest: so triangles stay across a long
/// and narrow shape, and follow it where it is bent afterwards. Their areas add up to the polygon's.
/// </summary>
public static class EarClipping
{
    /// <param name="ring">First point not repeated, either way round.</param>
    /// <returns>Indices, each triangle the same way round as the ring.</returns>
    public static ImmutableArray<(int A, int B, int C)> Of(IReadOnlyList<Vec2> ring)
    {
        ImmutableArray<(int, int, int)>.Builder triangles = ImmutableArray.CreateBuilder<(
            int,
            int,
            int
        )>();
        double sense = FlatPolygon.Area(ring) < 0 ? -1 : 1;
        List<int> left = [.. Enumerable.Range(0, ring.Count)];
        while (left.Count > 3)
        {
            int ear = Ear(ring, left, sense);
            triangles.Add(Around(left, ear));
            left.RemoveAt(ear);
        }

        if (left.Count == 3)
        {
            triangles.Add((left[0], left[1], left[2]));
        }

        return triangles.ToImmutable();
    }

    /// <summary>The place in the list of the ear to cut off; where doubles leave none, of the flattest corner.</summary>
    private static int Ear(IReadOnlyList<Vec2> ring, List<int> left, double sense)
    {
        int best = -1,
            flattest = 0;
        double shortest = double.MaxValue,
            least = double.MaxValue;
        for (int i = 0; i < left.Count; i++)
        {
            (int a, int b, int c) = Around(left, i);
            double turn = sense * (ring[b] - ring[a]).Cross(ring[c] - ring[a]),
                side = ring[a].ChordTo(ring[c]);
            if (Math.Abs(turn) < least)
            {
                (least, flattest) = (Math.Abs(turn), i);
            }

            if (turn > 0 && side < shortest && IsEmpty(ring, left, (a, b, c), sense))
            {
                (shortest, best) = (side, i);
            }
        }

        return best < 0 ? flattest : best;
    }

    private static bool IsEmpty(
        IReadOnlyList<Vec2> ring,
        List<int> left,
        (int A, int B, int C) t,
        double sense
    )
    {
        foreach (int i in left)
        {
            if (i == t.A || i == t.B || i == t.C)
            {
                continue;
            }

            Vec2 p = ring[i];
            if (
                sense * (ring[t.B] - ring[t.A]).Cross(p - ring[t.A]) >= 0
                && sense * (ring[t.C] - ring[t.B]).Cross(p - ring[t.B]) >= 0
                && sense * (ring[t.A] - ring[t.C]).Cross(p - ring[t.C]) >= 0
            )
            {
                return false;
            }
        }

        return true;
    }

    private static (int A, int B, int C) Around(List<int> left, int i) =>
        (left[(i + left.Count - 1) % left.Count], left[i], left[(i + 1) % left.Count]);
}
