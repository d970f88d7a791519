using System.Collections.Immutable;
using PlankFit.Nesting.Effort;
using PlankFit.Nesting.Mix;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Rows;

namespace PlankFit.Nesting.Search;

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

    /// <summary>Of the search for the dearest row of one length of strip, in a round and at last.</summary>
    private const long WholeSteps = 500_000;
    private const long FarSteps = 50_000;
    private const double Far = 0.06;
    private const double Cheaper = 0.95;
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

        var search = new PriceSteps(task.Start ?? MasterPrices.ByArea(problem, share));
        var bound = new Bounds(0, 0);
        if (master.Solve(patience) is not { } prices)
        {
            return new(master.Mix(), search.Centre, search.Centre, bound, false);
        }

        var values = new List<double>();
        bool whole = false;
        for (int round = 0; !patience.IsOver; round++)
        {
            values.Add(prices.Value);
            double eps =
                WorthWhile * Math.Min(problem.DearestBoard, Math.Max(0, prices.Value) / FewBoards);
            int added = Rippings(problem, share, master, prices, eps, patience);
            bool stopped = false;
            // At the real prices only where those searched by give nothing more.
            foreach (
                MasterPrices at in new[]
                {
                    round == 0 ? search.Centre : search.Next(prices),
                    prices,
                }
            )
            {
                if (Dearest(problem, share, at, prices, bound, eps, patience) is not { } dearest)
                {
                    stopped = true;
                    break;
                }

                Bounds here = DualBound.Of(problem, task.Bounded, at.Items, dearest);
                search.Tried(at, here.Cost > bound.Cost);
                if (here.Cost > bound.Cost || here.Asked > bound.Asked)
                {
                    bound = bound.Max(here);
                    report?.Invoke(new(master.Mix(), search.Centre, prices, bound, false));
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

            whole =
                added == 0
                || (
                    !(task.Fine && MayRaise(problem, prices, bound))
                    && IsEnough(prices, bound, values, task.Fine)
                );
            if (whole || round + 1 >= task.Rounds || master.Solve(patience) is not { } next)
            {
                break;
            }

            prices = next;
        }

        // Searches were cut short above; the bound is worth a longer one.
        ImmutableArray<BoardType> paying = [];
        if (!task.OnlyMix && Last(problem, share, search.Centre, patience) is { } last)
        {
            bound = bound.Max(DualBound.Of(problem, task.Bounded, search.Centre.Items, last));
            paying = DualBound.Paying(problem, task.Bounded, last);
        }

        AddNear(problem, share, master, prices, task, patience);
        return new(master.Mix(), search.Centre, prices, bound, whole) { Paying = paying };
    }

    /// <summary>The dearest rows at some prices, and those near to be.</summary>
    /// <param name="at">Where they are not the mix's own, they are lowered.</param>
    /// <param name="real">Of the mix.</param>
    private static DearestRows? Dearest(
        NestProblem problem,
        Share share,
        MasterPrices at,
        MasterPrices real,
        Bounds bound,
        double eps,
        Patience patience
    )
    {
        // While mix and bound are far from each other a bound need not be a sharp one.
        bool far = real.Value - bound.Cost > Far * real.Value;
        // Rows that are as near to be worth while as bound and mix are to each other make the mix better too.
        double part = real.Value > 0 ? Math.Max(Cheaper, bound.Cost / real.Value) : 1;
        return RowPricing.Whole(
            problem,
            share,
            ReferenceEquals(at, real) ? at : at.Lowered(Math.Min(1, part)),
            eps,
            far ? FarSteps : WholeSteps,
            far ? RowTails.CoarseMm : RowTails.FineMm,
            patience
        );
    }

    private static DearestRows? Last(
        NestProblem problem,
        Share share,
        MasterPrices prices,
        Patience patience
    ) =>
        RowPricing.Whole(
            problem,
            share,
            prices,
            WorthWhile * problem.DearestBoard,
            LastSteps,
            RowTails.FineMm,
            patience
        );

    /// <summary>Rows near to be worth while, of which whole plans are made.</summary>
    private static void AddNear(
        NestProblem problem,
        Share share,
        RowMaster master,
        MasterPrices prices,
        ColumnTask task,
        Patience patience
    )
    {
        if (task.Slack <= 0 || prices.Value >= task.Below)
        {
            return;
        }

        foreach (
            PricedRow near in RowPricing.Near(
                problem,
                share,
                prices,
                Math.Min(task.Slack * (task.Below - prices.Value), MostSlack * prices.Value),
                task.OnlyMix ? FewNear : NearRows,
                task.OnlyMix ? FarSteps : WholeSteps,
                patience
            )
        )
        {
            master.Add(near.Row, near.Kind);
        }
    }

    /// <summary>No row that makes the mix dearer by more than this part is near to be worth while, however bad the plan is that is to be bettered.</summary>
    private const double MostSlack = 0.04;

    /// <summary>Of rows near to be worth while, for one length of strip.</summary>
    private const int NearRows = 80;
    private const int FewNear = 20;

    /// <summary>So many rounds that do not make the mix cheaper by this part are enough, near the bound. Far from it they are not, though the bound stood still as long: it waits for prices that the mix has not come to.</summary>
    private const int Stalled = 6;
    private const double Slow = 1e-3;
    private const double Slower = 2e-4;
    private const double Nearing = 0.02;

    /// <summary>Costs are sums of few boards, and a bound a little nearer to the mix would be raised to the next of them.</summary>
    private static bool MayRaise(NestProblem problem, MasterPrices prices, Bounds bound)
    {
        double[] costs = [.. problem.Boards.Select(b => b.Cost)];
        return DualBound.Measure(costs) > Nearer * prices.Value
            && DualBound.Raised(costs, bound.Cost) < DualBound.Raised(costs, prices.Value);
    }

    /// <param name="values">Of the mix before each round.</param>
    private static bool IsEnough(MasterPrices prices, Bounds bound, List<double> values, bool fine)
    {
        int stalled = fine ? 3 * Stalled : Stalled;
        return prices.Value - bound.Cost <= (fine ? Nearer : Near) * prices.Value
            || (
                values.Count > stalled
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
