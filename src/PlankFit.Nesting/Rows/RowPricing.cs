using System.Collections.Immutable;

namespace PlankFit.Nesting;

/// <summary>Rows worth more than the strips that they need, at given prices.</summary>
internal static class RowPricing
{
    /// <summary>A quick look: what it does not find may be there all the same. What lies in a row found is not laid in the next, so that rows are unlike.</summary>
    /// <param name="worth">Prices to search by.</param>
    /// <param name="steps">Of the search for one length of strip.</param>
    public static List<PricedRow> Quick(
        NestProblem problem,
        Share share,
        MasterPrices worth,
        double eps,
        long steps
    )
    {
        var found = new List<PricedRow>();
        for (int k = 0; k < problem.Kinds; k++)
        {
            ImmutableArray<double> lengths = problem.StripLengths(k);
            if (lengths.IsEmpty)
            {
                continue;
            }

            int kind = k;
            using var values = new RowValues(problem, share, k, worth.Items);
            var search = new RowSearch(
                new RowPoses(problem, share, k, worth.Items),
                values,
                null
            );
            foreach (
                (int j, _) in lengths
                    .Select((l, j) => (j, Gain: values.AtMost(l) - worth.Strips[kind][j]))
                    .Where(g => g.Gain > eps)
                    .OrderByDescending(g => g.Gain)
                    .ThenBy(g => g.j)
            )
            {
                (List<Row> rows, _) = search.Find(
                    lengths[j],
                    worth.Strips[k][j] + eps,
                    steps
                );
                found.AddRange(rows.Select(r => new PricedRow(r, kind)));
                if (rows.Count > 0)
                {
                    search.LeaveOut(rows[0].Items);
                }
            }
        }

        return found;
    }

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
        for (int k = 0; k < problem.Kinds; k++)
        {
            ImmutableArray<double> lengths = problem.StripLengths(k);
            if (lengths.IsEmpty)
            {
                atMost.Add([]);
                continue;
            }

            int kind = k;
            using var values = new RowValues(problem, share, k, worth.Items);
            var poses = new RowPoses(problem, share, k, worth.Items);
            bool any = lengths
                .Where((l, j) => values.AtMost(l) > worth.Strips[kind][j] + eps)
                .Any();
            var sw = System.Diagnostics.Stopwatch.StartNew();
            RowTails? tails = any ? RowTails.Of(poses, lengths[0]) : null;
            var t1=sw.ElapsedMilliseconds; sw.Restart();
            var most = new double[lengths.Length];
            var rows = new List<Row>[lengths.Length];
            Parallel.For(
                0,
                lengths.Length,
                j =>
                {
                    double price = worth.Strips[kind][j];
                    most[j] = values.AtMost(lengths[j]);
                    if (tails is not null)
                    {
                        most[j] = Math.Min(most[j], tails.AtMost(lengths[j]));
                    }

                    rows[j] = [];
                    if (most[j] > price + eps && !enough.IsCancellationRequested)
                    {
                        (rows[j], bool whole) = new RowSearch(poses, values, tails).Find(
                            lengths[j],
                            price + eps,
                            steps
                        );
                        if (whole)
                        {
                            most[j] =
                                rows[j].Count == 0
                                    ? price + eps
                                    : rows[j][0].Items.Sum(i => worth.Items[i]);
                        }
                    }
                }
            );
            if (Environment.GetEnvironmentVariable("V")=="2") Console.WriteLine($"     kind {k} tails {t1} dfs {sw.ElapsedMilliseconds} steps {RowSearch.Steps/1000} cut {RowSearch.Cut}"); RowSearch.Steps=0; RowSearch.Cut=0;
            atMost.Add([.. most]);
            found.AddRange(rows.SelectMany(r => r).Select(r => new PricedRow(r, kind)));
            if (tails is not null)
            {
                // Rows that have nothing in common fit into one plan: with them the mix becomes better at once.
                var apart = new RowSearch(poses, values, tails);
                foreach (
                    int j in Enumerable
                        .Range(0, lengths.Length)
                        .Where(j => most[j] > worth.Strips[kind][j] + eps)
                        .OrderByDescending(j => most[j] - worth.Strips[kind][j])
                )
                {
                    (List<Row> next, _) = apart.Find(
                        lengths[j],
                        worth.Strips[k][j] + eps,
                        ApartSteps
                    );
                    if (next.Count > 0)
                    {
                        found.AddRange(next.Select(r => new PricedRow(r, kind)));
                        apart.LeaveOut(next[0].Items);
                    }
                }
            }
        }

        return new(found, atMost.ToImmutable());
    }
}

/// <param name="Kind">Of the strip that it was looked for.</param>
internal readonly record struct PricedRow(Row Row, int Kind);

/// <param name="AtMost">By kind and length of strip.</param>
internal sealed record DearestRows(
    List<PricedRow> Rows,
    ImmutableArray<ImmutableArray<double>> AtMost
);
