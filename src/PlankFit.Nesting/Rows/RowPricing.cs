using System.Collections.Immutable;

namespace PlankFit.Nesting;

/// <summary>Rows worth more than the strips that they need, at given prices.</summary>
internal sealed class RowPricing(
    NestProblem problem,
    Share share,
    MasterPrices prices,
    RowBook book,
    bool longAsTheyAre,
    double eps
)
{
    /// <summary>So many lengths of strip are looked at in a round, those that promise most.</summary>
    private const int Lengths = 6;

    /// <summary>So many rows of a kind are added in a round.</summary>
    private const int Added = 40;

    /// <param name="part">Only sets worth this part of the greatest gain are looked at.</param>
    /// <param name="most">Sets for one length of strip.</param>
    /// <returns>How many were added, and whether every set was looked at that may be worth more than its strip.</returns>
    public (int Added, bool All) Add(RowMaster master, double part, int most)
    {
        int added = 0;
        bool all = true;
        for (int k = 0; k < problem.Kinds; k++)
        {
            using var values = new RowValues(problem, share, k, prices.Items);
            (int more, bool seen) = OfKind(master, k, values, part, most);
            added += more;
            all &= seen;
        }

        return (added, all);
    }

    private (int, bool) OfKind(RowMaster master, int k, RowValues values, double part, int most)
    {
        ImmutableArray<double> lengths = problem.StripLengths(k);
        (int Bucket, double Gain)[] promising =
        [
            .. lengths
                .Select((l, j) => (j, Gain: values.AtMost(l) - prices.Strips[k][j]))
                .Where(g => g.Gain > eps)
                .OrderByDescending(g => g.Gain)
                .ThenBy(g => g.j),
        ];
        bool all = part == 0;
        var worth = new Dictionary<string, (Row Row, double Gain)>();
        int looked = 0;
        foreach ((int j, double gain) in promising)
        {
            if (looked++ == Lengths && worth.Count > 0)
            {
                break;
            }

            var found = new List<int[]>();
            all &= values.Find(
                lengths[j],
                prices.Strips[k][j] + Math.Max(eps, part * gain),
                most,
                found
            );
            foreach (int[] set in found)
            {
                Row row = longAsTheyAre ? book.Of(set) : book.Shortest(set);
                int bucket = problem.Bucket(k, row.LengthMm);
                if (bucket >= 0)
                {
                    double saved = set.Sum(i => prices.Items[i]) - prices.Strips[k][bucket];
                    if (saved > eps)
                    {
                        worth.TryAdd(row.Key, (row, saved));
                    }
                }
            }
        }

        int added = 0;
        foreach (
            (Row row, _) in worth
                .Values.OrderByDescending(w => w.Gain)
                .ThenBy(w => w.Row.Key, StringComparer.Ordinal)
        )
        {
            if (added >= Added)
            {
                break;
            }

            added += master.Add(row, k) ? 1 : 0;
        }

        return (added, all && added == 0);
    }
}
