using System.Collections.Immutable;

namespace PlankFit.Geometry.Primitives;

/// <summary>The same as <see cref="Thinning"/> for a closed line in space, some of whose vertices stay whatever they are.</summary>
public static class SpaceThinning
{
    /// <param name="ring">First point not repeated.</param>
    /// <param name="stays">Whether a vertex is kept in any case; at least two must be.</param>
    /// <param name="toleranceMm">The most that a vertex left out may lie off the chord that spans it.</param>
    /// <returns>The places in the ring of what is kept, in order.</returns>
    public static ImmutableArray<int> Closed(
        IReadOnlyList<Vec3> ring,
        Func<int, bool> stays,
        double toleranceMm
    )
    {
        int[] fixedAt = [.. Enumerable.Range(0, ring.Count).Where(stays)];
        if (fixedAt.Length < 2)
        {
            throw new ArgumentException(
                $"of {ring.Count} vertices {fixedAt.Length} stay; two must"
            );
        }

        bool[] kept = new bool[ring.Count];
        for (int i = 0; i < fixedAt.Length; i++)
        {
            int from = fixedAt[i],
                to = i + 1 < fixedAt.Length ? fixedAt[i + 1] : fixedAt[0] + ring.Count;
            kept[from] = true;
            Stack<(int From, int To)> open = new([(from, to)]);
            while (open.TryPop(out (int From, int To) span))
            {
                (int worst, double off) = Worst(ring, span.From, span.To);
                if (off > toleranceMm)
                {
                    kept[worst % ring.Count] = true;
                    open.Push((span.From, worst));
                    open.Push((worst, span.To));
                }
            }
        }

        return [.. Enumerable.Range(0, ring.Count).Where(i => kept[i])];
    }

    private static (int At, double OffMm) Worst(IReadOnlyList<Vec3> ring, int from, int to)
    {
        Vec3 a = ring[from],
            b = ring[to % ring.Count],
            chord = b - a;
        double squared = chord.NormSquared,
            most = -1;
        int worst = from;
        for (int i = from + 1; i < to; i++)
        {
            Vec3 p = ring[i % ring.Count] - a;
            // Past the chord's ends the distance is to the end, not to the line.
            double along = squared > 0 ? Math.Clamp(p.Dot(chord) / squared, 0, 1) : 0,
                off = (p - (along * chord)).Norm;
            if (off > most)
            {
                (most, worst) = (off, i);
            }
        }

        return (worst, most);
    }
}
