using System.Collections.Immutable;

namespace PlankFit.Nesting;

/// <summary>
/// Finds the rows and rippings that are worth having, and with them the cheapest mix in fractions (column generation, Gilmore and Gomory 1961, from memory), and a bound
/// on what any mix costs.
/// </summary>
internal static class ColumnSearch
{
    /// <summary>A row or ripping must save more than this part of the dearest board, and of the mix where that is little.</summary>
    private const double WorthWhile = 1e-5;
    private const double FewBoards = 10;

    /// <summary>Bound and mix this near to each other, as a part of the mix, are near enough.</summary>
    private const double Near = 3e-3;
    private const double Nearer = 3e-4;

    /// <summary>How far prices to search by go from the last ones towards the new ones (Wentges 1997, from memory): the search swings less.</summary>
    private const double Step = 0.2;

    /// <summary>Of the search for the dearest row of one length of strip, in a round and at last.</summary>
    private const long WholeSteps = 500_000;
    private const double Far = 0.06;
    private const long LastSteps = 20_000_000;

    /// <param name="missing">By item, what leaving one out costs.</param>
    /// <param name="task">How it is to be gone about.</param>
    /// <param name="report">Told bound and prices whenever the bound is better.</param>
    public static ColumnResult Run(
        NestProblem problem,
        Share share,
        double[] missing,
        ColumnTask task,
        Patience patience,
        Action<ColumnResult>? report = null
    )
    {
        using var master = new RowMaster(problem, share, missing);
        foreach (int b in Usable(problem, share))
        {
            master.Add(problem.Lanes[b].Best((c, l) => problem.Classes[c].HeightMm * l), b);
        }

        foreach (Row row in task.Begin)
        {
            Offer(problem, share, master, row);
        }

        MasterPrices centre = task.Start ?? ByArea(problem, share);
        var bound = new Bounds(0, 0);
        if (master.Solve(patience) is not { } prices)
        {
            return new(master.Mix(), centre, centre, bound, false);
        }

        var values = new List<double>();
        bool whole = false;
        for (int round = 0; !patience.IsOver; round++)
        {
            values.Add(prices.Value);
            double eps =
                WorthWhile * Math.Min(problem.DearestBoard, Math.Max(0, prices.Value) / FewBoards);
            // While mix and bound are far from each other a bound need not be a sharp one.
            long steps =
                prices.Value - bound.Cost > Far * prices.Value ? WholeSteps / 10 : WholeSteps;
            int added = Rippings(problem, share, master, prices, eps, patience);
            bool stopped = false;
            foreach (
                MasterPrices at in new[] { centre.Towards(prices, round == 0 ? 0 : Step), prices }
            )
            {
                if (RowPricing.Whole(problem, share, at, eps, steps, patience) is not { } dearest)
                {
                    stopped = true;
                    break;
                }

                Bounds here = DualBound.Of(problem, task.Bounded, at.Items, dearest);
                if (here.Cost > bound.Cost)
                {
                    centre = at;
                }

                if (here.Cost > bound.Cost || here.Asked > bound.Asked)
                {
                    bound = bound.Max(here);
                    report?.Invoke(new(master.Mix(), centre, prices, bound, false));
                }

                added += Add(problem, master, prices, dearest.Rows, eps);
                if (added > 0)
                {
                    break;
                }
            }

            if (stopped)
            {
                break;
            }

            whole = added == 0 || IsEnough(prices, bound, values, round, task.Fine);
            if (whole || round + 1 >= task.Rounds || master.Solve(patience) is not { } next)
            {
                break;
            }

            prices = next;
        }

        // Searches were cut short above; the bound is worth a longer one.
        if (
            RowPricing.Whole(
                problem,
                share,
                centre,
                WorthWhile * problem.DearestBoard,
                LastSteps,
                patience
            ) is
            { } last
        )
        {
            bound = bound.Max(DualBound.Of(problem, task.Bounded, centre.Items, last));
        }

        if (task.Slack > 0 && prices.Value < task.Below)
        {
            foreach (
                PricedRow near in RowPricing.Near(
                    problem,
                    share,
                    prices,
                    task.Slack * (task.Below - prices.Value),
                    NearRows,
                    WholeSteps,
                    patience
                )
            )
            {
                master.Add(near.Row, near.Kind);
            }
        }

        return new(master.Mix(), centre, prices, bound, whole);
    }

    /// <summary>Of rows near to be worth while, for one length of strip.</summary>
    private const int NearRows = 80;

    /// <summary>So many rounds that do not make the mix cheaper by this part are enough.</summary>
    private const int Stalled = 6;
    private const double Slow = 1e-3;
    private const double Slower = 2e-4;
    private const double Nearing = 0.02;

    private static bool IsEnough(
        MasterPrices prices,
        Bounds bound,
        List<double> values,
        int round,
        bool fine
    )
    {
        int stalled = fine ? 3 * Stalled : Stalled;
        return prices.Value - bound.Cost <= (fine ? Nearer : Near) * prices.Value
            || (
                round >= stalled
                && values[^stalled] - prices.Value < (fine ? Slower : Slow) * prices.Value
                && prices.Value - bound.Cost <= Nearing * prices.Value
            );
    }

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
            .Select(b => (problem.Boards[b].Cost, Room: Room(b)))
            .Where(b => b.Room > 0)
            .Select(b => b.Cost / b.Room)
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
        double eps,
        Patience patience
    )
    {
        int added = 0;
        foreach (int b in Usable(problem, share))
        {
            if (patience.IsOver)
            {
                break;
            }

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

/// <param name="Begin">Rows to begin with.</param>
/// <param name="Start">Prices to begin with, of a like problem; by area where there are none.</param>
/// <param name="Bounded">What the bound is for: how many of each item, no more than are asked for, out of which boards.</param>
/// <param name="Rounds">Stop after so many.</param>
/// <param name="Below">Of plans that cost no less none is wanted.</param>
/// <param name="Slack">Rows near to be worth while are added: this part of what the mix is below that.</param>
/// <param name="Fine">Go on until mix and bound are very near each other.</param>
internal sealed record ColumnTask(
    IEnumerable<Row> Begin,
    MasterPrices? Start,
    Share Bounded,
    int Rounds,
    double Below,
    double Slack = 0,
    bool Fine = false
);

/// <param name="Centre">Prices at which the bound was found.</param>
/// <param name="Prices">Of the mix.</param>
/// <param name="Bound">No mix of what it is for costs less, in fractions or whole; noughts where none was found.</param>
/// <param name="Whole">The search came to its end.</param>
internal sealed record ColumnResult(
    MasterMix Mix,
    MasterPrices Centre,
    MasterPrices Prices,
    Bounds Bound,
    bool Whole
);
