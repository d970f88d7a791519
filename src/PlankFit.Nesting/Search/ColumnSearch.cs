using System.Collections.Immutable;

namespace PlankFit.Nesting;

/// <summary>
/// Finds the rows and rippings that are worth having, and with them the cheapest mix in fractions (column generation, Gilmore and Gomory 1961, from memory), and a bound
/// on what any mix costs.
/// </summary>
internal static class ColumnSearch
{
    /// <summary>A row or ripping must save more than this part of the dearest board.</summary>
    private const double WorthWhile = 1e-5;

    /// <summary>Bound and mix this near to each other, as a part of the mix, are near enough.</summary>
    private const double Near = 3e-3;
    private const double Nearer = 3e-4;

    /// <summary>How far prices to search by go from the last ones towards the new ones (Wentges 1997, from memory): the search swings less.</summary>
    private const double Step = 0.2;

    /// <summary>Of the search for the dearest row of one length of strip, in a round and at last.</summary>
    private const long WholeSteps = 500_000;
    private const long LastSteps = 20_000_000;

    /// <param name="begin">Rows to begin with.</param>
    /// <param name="start">Prices to begin with, of a like problem; by area where there are none.</param>
    /// <param name="bounded">How many of each item the bound is for; no more than are asked for.</param>
    /// <param name="rounds">Stop after so many.</param>
    /// <param name="below">Of plans that cost no less none is wanted.</param>
    /// <param name="slack">Rows near to be worth while are added: this part of what the mix is below that.</param>
    /// <param name="fine">Go on until mix and bound are very near each other.</param>
    public static ColumnResult Run(
        NestProblem problem,
        Share share,
        double[] missing,
        IEnumerable<Row> begin,
        MasterPrices? start,
        Share bounded,
        int rounds,
        double below,
        double slack,
        CancellationToken enough,
        bool fine = false
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

        MasterPrices prices = master.Solve(),
            centre = start ?? ByArea(problem, share);
        double bound = 0;
        var values = new List<double>();
        for (int round = 0; ; round++)
        {
            values.Add(prices.Value);
            int added = Rippings(problem, share, master, prices, eps);
            foreach (
                MasterPrices at in new[] { centre.Towards(prices, round == 0 ? 0 : Step), prices }
            )
            {
                DearestRows dearest = RowPricing.Whole(problem, share, at, eps, WholeSteps, enough);
                double here = DualBound.Of(problem, bounded, at.Items, dearest);
                if (here > bound)
                {
                    (bound, centre) = (here, at);
                }

                added += Add(problem, master, prices, dearest.Rows, eps);
                if (added > 0)
                {
                    break;
                }
            }

            if (
                added == 0
                || prices.Value - bound <= (fine ? Nearer : Near) * prices.Value
                || (
                    round >= (fine ? 3 * Stalled : Stalled)
                    && values[^(fine ? 3 * Stalled : Stalled)] - prices.Value
                        < (fine ? Slower : Slow) * prices.Value
                    && prices.Value - bound <= Nearing * prices.Value
                )
                || round + 1 >= rounds
                || enough.IsCancellationRequested
            )
            {
                break;
            }

            prices = master.Solve();
        }

        // Searches were cut short above; the bound is worth a longer one.
        DearestRows last = RowPricing.Whole(problem, share, centre, eps, LastSteps, enough);
        bound = Math.Max(bound, DualBound.Of(problem, bounded, centre.Items, last));
        if (slack > 0 && prices.Value < below)
        {
            foreach (
                PricedRow near in RowPricing.Near(
                    problem,
                    share,
                    prices,
                    slack * (below - prices.Value),
                    NearRows,
                    WholeSteps
                )
            )
            {
                master.Add(near.Row, near.Kind);
            }
        }

        return new(master.Mix(), centre, prices, bound);
    }

    /// <summary>Of rows near to be worth while, for one length of strip.</summary>
    private const int NearRows = 80;

    /// <summary>So many rounds that do not make the mix cheaper by this part are enough.</summary>
    private const int Stalled = 6;
    private const double Slow = 1e-3;
    private const double Slower = 2e-4;
    private const double Nearing = 0.02;

    /// <summary>Those that are worth more than their strips at the real prices.</summary>
    private static int Add(
        NestProblem problem,
        RowMaster master,
        MasterPrices real,
        List<PricedRow> rows,
        double eps
    )
    {
        int added = 0;
        foreach (PricedRow found in rows)
        {
            int bucket = problem.Bucket(found.Kind, found.Row.LengthMm);
            if (
                bucket >= 0
                && found.Row.Worth(real.Items) > real.Strips[found.Kind][bucket] + eps
                && master.Add(found.Row, found.Kind)
            )
            {
                added++;
            }
        }

        return added;
    }

    /// <summary>Prices to begin with: everything by the room that it takes, at what room costs in the cheapest board.</summary>
    public static MasterPrices ByArea(NestProblem problem, Share share)
    {
        double Room(int b) =>
            problem.Lanes[b].Best((c, length) => problem.Classes[c].HeightMm * length).Value;
        double rate = Usable(problem, share)
            .Where(b => Room(b) > 0)
            .Select(b => problem.Boards[b].Cost / Room(b))
            .DefaultIfEmpty(0)
            .Min();
        return new(
            0,
            [.. problem.Items.Select((item, i) => rate * item.HeightMm * problem.Ends.SizeMm(i))],
            [.. problem.Boards.Select(_ => 0.0)],
            [
                .. Enumerable
                    .Range(0, problem.Kinds)
                    .Select(k =>
                        problem
                            .StripLengths(k)
                            .Select(l => rate * problem.Classes[problem.ClassOf(k)].HeightMm * l)
                            .ToImmutableArray()
                    ),
            ]
        );
    }

    /// <summary>A row to every kind of strip that it can lie in.</summary>
    private static void Offer(NestProblem problem, Share share, RowMaster master, Row row)
    {
        if (!row.IsWithin(share.Items))
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

/// <param name="Bound">No mix of what it is for costs less, in fractions or whole; 0 where none was found.</param>
/// <param name="Centre">Prices at which the bound was found.</param>
/// <param name="Prices">Of the mix.</param>
internal sealed record ColumnResult(
    MasterMix Mix,
    MasterPrices Centre,
    MasterPrices Prices,
    double Bound
);
