using System.Collections.Immutable;
using PlankFit.Nesting.Effort;
using PlankFit.Nesting.Model;

namespace PlankFit.Nesting.Rows;

/// <summary>Rows worth more than the strips that they need, at given prices.</summary>
internal static class RowPricing
{
    private const long ApartSteps = 100_000;

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
        ImmutableArray<ImmutableArray<BandAtMost>>.Builder atMost = ImmutableArray.CreateBuilder<
            ImmutableArray<BandAtMost>
        >(problem.Kinds);
        var found = new List<PricedRow>();
        for (int k = 0; k < problem.Kinds; k++)
        {
            int kind = k;
            ImmutableArray<double> lengths = problem.StripLengths(k);
            double[] most = new double[lengths.Length];
            Array.Fill(most, double.PositiveInfinity);
            ImmutableArray<int> buckets = tables.Buckets(k);
            if (
                buckets.IsEmpty
                && problem.Boards.All(b =>
                    b.Sort != problem.SortOf(kind)
                    || b.Region.WidthMm + problem.ProudMm
                        < problem.Classes[problem.ClassOf(kind)].Bands[^1].LeastMm
                )
            )
            {
                // No board has such a lane.
                atMost.Add([
                    .. problem
                        .Classes[problem.ClassOf(k)]
                        .Bands.Select(_ => new BandAtMost(
                            [.. most],
                            [.. problem.BoundLengths(kind).Select(_ => double.PositiveInfinity)],
                            0
                        )),
                ]);
                continue;
            }

            ImmutableArray<double> prices = worth.Strips[k];
            RowValues values = tables.Values(k);
            if (!values.IsWhole || patience.IsOver)
            {
                return null;
            }

            for (int j = 0; j < most.Length; j++)
            {
                most[j] = values.AtMost(lengths[j]);
            }

            RowTails? tails = buckets.Any(j => values.AtMost(lengths[j]) > prices[j] + eps)
                ? tables.Tails(k)
                : null;
            var rows = new List<Row>[lengths.Length];
            Parallel.ForEach(
                buckets,
                j =>
                {
                    if (tails is not null)
                    {
                        most[j] = Math.Min(most[j], tails.AtMost(lengths[j]));
                    }

                    rows[j] = [];
                    if (most[j] > prices[j] + eps && !patience.IsOver)
                    {
                        (rows[j], double dearest, bool whole) = tables
                            .Search(kind)
                            .Find(lengths[j], prices[j] + eps, steps);
                        most[j] = whole ? dearest : most[j];
                    }
                }
            );
            var any = new WorthAtMost(most, values, tails, tails is null ? 0 : tables.TailsToMm(k));
            if (Bands(problem, share, k, worth.Items, any, patience) is not { } bands)
            {
                return null;
            }

            atMost.Add(bands);
            found.AddRange(buckets.SelectMany(j => rows[j]).Select(r => new PricedRow(r, kind)));
            if (!patience.IsOver)
            {
                // Rows that have nothing in common fit into one plan: with them the mix becomes better at once.
                RowSearch apart = tables.Search(kind);
                foreach (
                    int j in buckets
                        .Where(j => most[j] > prices[j] + eps)
                        .OrderByDescending(j => most[j] - prices[j])
                )
                {
                    (List<Row> next, _, _) = apart.Find(lengths[j], prices[j] + eps, ApartSteps);
                    if (next.Count > 0)
                    {
                        found.AddRange(next.Select(r => new PricedRow(r, kind)));
                        apart.LeaveOut(next[0].Parts);
                    }
                }
            }
        }

        return new(found, atMost.ToImmutable());
    }

    /// <summary>What rows are worth at the most whose highest thing is of a band: no more than any row is, and no more than things of its height give.</summary>
    private static ImmutableArray<BandAtMost>? Bands(
        NestProblem problem,
        Share share,
        int kind,
        double[] worths,
        WorthAtMost any,
        Patience patience
    )
    {
        ImmutableArray<double> lengths = problem.StripLengths(kind);
        double longest = problem.LongestMm(kind);
        double[] bounded =
        [
            .. problem.BoundLengths(kind).Select(l => any.Of(l, problem.Bucket(kind, l))),
        ];
        ImmutableArray<BandAtMost>.Builder bands = ImmutableArray.CreateBuilder<BandAtMost>();
        foreach (LaneBand band in problem.Classes[problem.ClassOf(kind)].Bands)
        {
            if (bands.Count == 0)
            {
                bands.Add(new([.. any.Searched], [.. bounded], any.Values.AtMost(longest)));
                continue;
            }

            using var values = new RowValues(problem, share, kind, worths, patience, band.HighMm);
            if (!values.IsWhole)
            {
                return null;
            }

            bands.Add(
                new(
                    [.. lengths.Select((l, j) => Math.Min(any.Searched[j], values.AtMost(l)))],
                    [
                        .. problem
                            .BoundLengths(kind)
                            .Select((l, j) => Math.Min(bounded[j], values.AtMost(l))),
                    ],
                    values.AtMost(longest)
                )
            );
        }

        return bands.ToImmutable();
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
