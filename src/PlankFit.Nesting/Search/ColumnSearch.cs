using System.Collections.Immutable;

namespace PlankFit.Nesting;

/// <summary>
/// Finds the rows and rippings that are worth having, and with them the cheapest mix in fractions (column generation, Gilmore and Gomory 1961, from memory).
/// </summary>
internal static class ColumnSearch
{
    /// <summary>A row or ripping must save more than this part of the dearest board.</summary>
    private const double WorthWhile = 1e-5;

    /// <param name="longAsTheyAre">
    /// False: rows are as short as the least that their things ask of any row, so that the mix is a lower bound; true: rows are laid out and measured.
    /// </param>
    /// <param name="begin">Rows to begin with.</param>
    /// <param name="most">How many sets of things are looked at for one strip in a round.</param>
    /// <param name="rounds">Stop after so many.</param>
    public static ColumnResult Run(
        NestProblem problem,
        Share share,
        double[] missing,
        RowBook book,
        bool longAsTheyAre,
        IEnumerable<Row> begin,
        int most,
        int rounds,
        CancellationToken enough
    )
    {
        using var master = new RowMaster(problem, share, missing);
        double eps = WorthWhile * problem.DearestBoard;
        foreach (int b in Usable(problem, share))
        {
            master.Add(problem.Lanes[b].Best((c, l) => problem.Classes[c].HeightMm * l), b);
        }

        foreach (Row row in begin)
        {
            Offer(problem, share, master, row);
        }

        MasterPrices prices = master.Solve();
        int part = 0;
        for (int round = 0; ; round++)
        {
            int added = Rippings(problem, share, master, prices, eps);
            var pricing = new RowPricing(problem, share, prices, book, longAsTheyAre, eps);
            (int rows, bool all) = pricing.Add(master, Parts[part], most);
            added += rows;
            if (round + 1 >= rounds || enough.IsCancellationRequested)
            {
                return new(master.Mix(), prices, false);
            }

            if (added == 0)
            {
                if (part + 1 == Parts.Length)
                {
                    return new(master.Mix(), prices, all);
                }

                part++;
                continue;
            }

            part = 0;
            prices = master.Solve();
        }
    }

    /// <summary>First only sets worth far more than the strip's price are looked at, then all worth more.</summary>
    private static readonly ImmutableArray<double> Parts = [0.6, 0.2, 0];

    /// <summary>A row to every kind of strip that it can lie in.</summary>
    private static void Offer(NestProblem problem, Share share, RowMaster master, Row row)
    {
        if (row.Items.GroupBy(i => i).Any(g => g.Count() > share.Items[g.Key]))
        {
            return;
        }

        for (int k = 0; k < problem.Kinds; k++)
        {
            if (row.Items.All(i => problem.Serves(k, i)))
            {
                master.Add(row, k);
            }
        }
    }

    private static IEnumerable<int> Usable(NestProblem problem, Share share) =>
        Enumerable.Range(0, problem.Boards.Length).Where(b => share.Boards[b] > 0);

    private static int Rippings(
        NestProblem problem,
        Share share,
        RowMaster master,
        MasterPrices prices,
        double eps
    )
    {
        int added = 0;
        foreach (int b in Usable(problem, share))
        {
            int sort = problem.Boards[b].Sort;
            Ripping best = problem
                .Lanes[b]
                .Best(
                    (c, length) =>
                    {
                        int kind = problem.Kind(c, sort);
                        return prices.Strips[kind][problem.Bucket(kind, length)];
                    }
                );
            if (best.Value > problem.Boards[b].Cost + prices.Boards[b] + eps && master.Add(best, b))
            {
                added++;
            }
        }

        return added;
    }
}

/// <param name="Proved">No row and no ripping that was left out is worth more than its price.</param>
internal sealed record ColumnResult(MasterMix Mix, MasterPrices Prices, bool Proved);
