using System.Collections.Immutable;
using PlankFit.Nesting.Effort;

namespace PlankFit.Nesting.Rows;

/// <summary>Rows worth more than the strips that they need, at given prices.</summary>
internal static class RowPricing
{
    /// <summary>The dearest rows of every length of strip; with them, what no row of that length is worth more than.</summary>
    /// <param name="steps">Of the search for one length of strip; where it takes more, the figure is somewhat high.</param>
    /// <returns>Null where there was no time for it.</returns>
    public static DearestRows? Whole(
        NestProblem problem,
        Share share,
        MasterPrices worth,
        double eps,
        long steps,
        double fineMm,
        Patience patience
    )
    {
        using var tables = new RowTables(problem, share, worth.Items, fineMm, patience);
        KindPricing[] kinds =
        [
            .. Enumerable
                .Range(0, problem.Kinds)
                .Select(k => new KindPricing(problem, share, worth, eps, k, tables, patience)),
        ];
        // Bounds first, each of which is worked out by all processors; then every length of every kind by itself, and at last kind by kind.
        if (!kinds.All(k => k.Bound()))
        {
            return null;
        }

        Parallel.ForEach(
            kinds.SelectMany(k => k.Lengths.Select(j => (Kind: k, Length: j))),
            one => one.Kind.Find(one.Length, steps)
        );
        Parallel.ForEach(kinds, k => k.Finish());
        return kinds.Any(k => k.AtMost is null)
            ? null
            : new([.. kinds.SelectMany(k => k.Found)], [.. kinds.Select(k => k.AtMost!.Value)]);
    }

    /// <summary>All rows that are worth no less than their strips by more than a slack: if a plan in whole boards costs no more than that above the mix, it is made of these.</summary>
    /// <param name="most">For one length of strip.</param>
    public static List<PricedRow> Near(
        NestProblem problem,
        Share share,
        MasterPrices worth,
        double slack,
        int most,
        long steps,
        Patience patience
    )
    {
        using var tables = new RowTables(problem, share, worth.Items, RowTails.FineMm, patience);
        var found = new List<PricedRow>();
        for (int k = 0; k < problem.Kinds; k++)
        {
            int kind = k;
            ImmutableArray<int> buckets = tables.Buckets(k);
            if (buckets.IsEmpty || patience.IsOver || !tables.Values(k).IsWhole)
            {
                continue;
            }

            ImmutableArray<double> lengths = problem.StripLengths(k);
            _ = tables.Tails(k);
            var rows = new List<Row>[lengths.Length];
            Parallel.ForEach(
                buckets,
                j =>
                    rows[j] = tables
                        .Search(kind)
                        .All(lengths[j], worth.Strips[kind][j] - slack, most, steps)
            );
            found.AddRange(
                buckets
                    .SelectMany(j => rows[j])
                    .DistinctBy(r => r.Key)
                    .Select(r => new PricedRow(r, kind))
            );
        }

        return found;
    }
}

/// <summary>What no row of one kind of strip is worth more than, whatever lies in it.</summary>
/// <param name="Searched">By length of strip, as the search found it.</param>
/// <param name="Values">Of any length.</param>
/// <param name="Tails">Of lengths up to <paramref name="TailsToMm"/>; null where they were not needed.</param>
internal readonly record struct WorthAtMost(
    double[] Searched,
    RowValues Values,
    RowTails? Tails,
    double TailsToMm
)
{
    /// <summary>Of a length that is searched for by nobody: what any row of the next longer one gives, and what the upper bounds say of it.</summary>
    /// <param name="longer">The next longer one, -1 where there is none.</param>
    public double Of(double lengthMm, int longer)
    {
        double least = Values.AtMost(lengthMm);
        least = longer < 0 ? least : Math.Min(least, Searched[longer]);
        return Tails is null || lengthMm > TailsToMm
            ? least
            : Math.Min(least, Tails.AtMost(lengthMm));
    }
}

/// <param name="Kind">Of the strip that it was looked for.</param>
internal readonly record struct PricedRow(Row Row, int Kind);

/// <param name="AtMost">By kind, and by band of its class.</param>
internal sealed record DearestRows(
    List<PricedRow> Rows,
    ImmutableArray<ImmutableArray<BandAtMost>> AtMost
);

/// <summary>No row of a band is worth more.</summary>
/// <param name="Lengths">By length of strip.</param>
/// <param name="Bounded">By length of the boards that are in the bound only.</param>
/// <param name="Beyond">Of anything longer than its strips, which a narrower lane in an uneven board may be.</param>
internal sealed record BandAtMost(
    ImmutableArray<double> Lengths,
    ImmutableArray<double> Bounded,
    double Beyond
);
