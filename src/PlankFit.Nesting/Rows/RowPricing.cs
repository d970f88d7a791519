using System.Collections.Immutable;

namespace PlankFit.Nesting;

/// <summary>Rows worth more than the strips that they need, at given prices.</summary>
internal static class RowPricing
{
    private const long ApartSteps = 100_000;

    /// <summary>The dearest rows of every length of strip; with them, what no row of that length is worth more than.</summary>
    /// <param name="steps">Of the search for one length of strip; where it takes more, the figure is somewhat high.</param>
    public static DearestRows Whole(
        NestProblem problem,
        Share share,
        MasterPrices worth,
        double eps,
        long steps,
        CancellationToken enough
    )
    {
        var atMost = ImmutableArray.CreateBuilder<ImmutableArray<double>>(problem.Kinds);
        var found = new List<PricedRow>();
        var beyond = new double[problem.Kinds];
        for (int k = 0; k < problem.Kinds; k++)
        {
            int kind = k;
            ImmutableArray<double> lengths = problem.StripLengths(k);
            var most = new double[lengths.Length];
            Array.Fill(most, double.PositiveInfinity);
            ImmutableArray<int> buckets = problem.Buckets(k, share);
            if (buckets.IsEmpty)
            {
                atMost.Add([.. most]);
                continue;
            }

            ImmutableArray<double> prices = worth.Strips[k];
            using var values = new RowValues(problem, share, k, worth.Items);
            beyond[k] = values.AtMost(problem.LongestMm(k));
            var poses = new RowPoses(problem, share, k, worth.Items);
            RowTails? tails = buckets.Any(j => values.AtMost(lengths[j]) > prices[j] + eps)
                ? RowTails.Of(poses, lengths[buckets[0]])
                : null;
            var rows = new List<Row>[lengths.Length];
            Parallel.ForEach(
                buckets,
                j =>
                {
                    most[j] = values.AtMost(lengths[j]);
                    if (tails is not null)
                    {
                        most[j] = Math.Min(most[j], tails.AtMost(lengths[j]));
                    }

                    rows[j] = [];
                    if (most[j] > prices[j] + eps && !enough.IsCancellationRequested)
                    {
                        (rows[j], double dearest, bool whole) = new RowSearch(
                            poses,
                            values,
                            tails
                        ).Find(lengths[j], prices[j] + eps, steps);
                        most[j] = whole ? dearest : most[j];
                    }
                }
            );
            atMost.Add([.. most]);
            found.AddRange(buckets.SelectMany(j => rows[j]).Select(r => new PricedRow(r, kind)));
            if (tails is not null)
            {
                // Rows that have nothing in common fit into one plan: with them the mix becomes better at once.
                var apart = new RowSearch(poses, values, tails);
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

        return new(found, atMost.ToImmutable(), [.. beyond]);
    }

    /// <summary>All rows that are worth no less than their strips by more than a slack: if a plan in whole boards costs no more than that above the mix, it is made of these.</summary>
    /// <param name="most">For one length of strip.</param>
    public static List<PricedRow> Near(
        NestProblem problem,
        Share share,
        MasterPrices worth,
        double slack,
        int most,
        long steps
    )
    {
        var found = new List<PricedRow>();
        for (int k = 0; k < problem.Kinds; k++)
        {
            int kind = k;
            ImmutableArray<int> buckets = problem.Buckets(k, share);
            if (buckets.IsEmpty)
            {
                continue;
            }

            using var values = new RowValues(problem, share, k, worth.Items);
            var poses = new RowPoses(problem, share, k, worth.Items);
            ImmutableArray<double> lengths = problem.StripLengths(k);
            RowTails? tails = RowTails.Of(poses, lengths[buckets[0]]);
            var rows = new List<Row>[lengths.Length];
            Parallel.ForEach(
                buckets,
                j =>
                    rows[j] = new RowSearch(poses, values, tails).All(
                        lengths[j],
                        worth.Strips[kind][j] - slack,
                        most,
                        steps
                    )
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

/// <param name="Kind">Of the strip that it was looked for.</param>
internal readonly record struct PricedRow(Row Row, int Kind);

/// <param name="AtMost">By kind and length of strip.</param>
/// <param name="Beyond">By kind: of anything longer than its strips, which a narrower lane in an uneven board may be.</param>
internal sealed record DearestRows(
    List<PricedRow> Rows,
    ImmutableArray<ImmutableArray<double>> AtMost,
    ImmutableArray<double> Beyond
);
