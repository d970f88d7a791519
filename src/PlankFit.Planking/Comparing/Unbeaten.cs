using System.Collections.Immutable;

namespace PlankFit.Planking.Comparing;

/// <summary>
/// Which of several things nothing beats. One beats another where it is as good in every measure and better in one, so that of things alike in all of them none beats
/// another, and whoever weighs the measures as he likes finds what suits him best among those that are left (the Pareto front).
/// </summary>
public static class Unbeaten
{
    /// <param name="measures">Of each thing, the less the better; as many of each.</param>
    /// <returns>The places of what nothing beats, in order.</returns>
    /// <exception cref="ArgumentException">A measure is not a number, or one thing has more measures than another.</exception>
    public static ImmutableArray<int> Of(IReadOnlyList<ImmutableArray<double>> measures)
    {
        Refuse(measures);
        // Whatever beats a thing comes before it in the order of all measures, and what beats that as well: only those left so far need be asked.
        List<int> left = [];
        foreach (int i in Enumerable.Range(0, measures.Count).Order(Comparer<int>.Create(InOrder)))
        {
            if (!left.Any(other => Beats(measures[other], measures[i])))
            {
                left.Add(i);
            }
        }

        return [.. left.Order()];

        int InOrder(int a, int b)
        {
            for (int m = 0; m < measures[a].Length; m++)
            {
                if (measures[a][m] != measures[b][m])
                {
                    return measures[a][m].CompareTo(measures[b][m]);
                }
            }

            return a.CompareTo(b);
        }
    }

    private static bool Beats(ImmutableArray<double> one, ImmutableArray<double> other)
    {
        bool better = false;
        for (int m = 0; m < one.Length; m++)
        {
            if (one[m] > other[m])
            {
                return false;
            }

            better |= one[m] < other[m];
        }

        return better;
    }

    private static void Refuse(IReadOnlyList<ImmutableArray<double>> measures)
    {
        for (int i = 0; i < measures.Count; i++)
        {
            if (measures[i].Length != measures[0].Length)
            {
                throw new ArgumentException(
                    $"the first thing has {measures[0].Length} measures, number {i + 1} has {measures[i].Length}",
                    nameof(measures)
                );
            }

            if (measures[i].Any(double.IsNaN))
            {
                throw new ArgumentException(
                    $"a measure of number {i + 1} is not a number",
                    nameof(measures)
                );
            }
        }
    }
}
