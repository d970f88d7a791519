using System.Collections.Immutable;

namespace PlankFit.Nesting;

/// <summary>The search for one material's plan: a plan at once, then a bound, then better plans until there is none, or enough.</summary>
internal static class NestSearch
{
    private const int ColumnRounds = 400;

    /// <summary>So many attempts in a row without success are enough of one kind.</summary>
    private const int Idle = 30;

    /// <summary>Of the solver when the whole plan is mixed.</summary>
    private const double Effort = 3;

    /// <summary>More rows than this take the solver too long to mix at once: the plan is settled board by board.</summary>
    private const int MixedRows = 3000;
    private const int MixedItems = 130;
    private const long NearSteps = 1_000_000;

    /// <param name="rounds">Of improvement, after the first plans.</param>
    /// <param name="report">Told the round, the plan and the bound whenever one of them is better.</param>
    public static NestResult Run(
        NestProblem problem,
        int seed,
        int rounds,
        Action<int, Cutting, double> report,
        CancellationToken enough
    )
    {
        Share share = Share.AllOf(problem);
        var book = new RowBook(problem.Ends);
        double[] missing = [.. problem.Items.Select(i => Missing(problem, i))];
        Cutting best = FirstFit.Of(problem, share, book);
        double value = best.Value(problem, share, missing),
            bound = 0;
        report(0, best, bound);
        if (best.Boards.IsEmpty)
        {
            return new(best, 0, 0);
        }

        void Offer(Cutting? other, int round = 0)
        {
            if (other?.Value(problem, share, missing) < value)
            {
                (best, value) = (other, other.Value(problem, share, missing));
                report(round, best, bound);
            }
        }

        Offer(
            PricedFit.Of(problem, share, missing, book, ColumnSearch.ByArea(problem, share), enough)
        );
        ColumnResult laid = ColumnSearch.Run(
            problem,
            share,
            missing,
            best.Rows,
            null,
            Placed(problem, share, best),
            ColumnRounds,
            value,
            0,
            enough
        );
        bound = DualBound.Raised(problem, laid.Bound);
        report(0, best, bound);
        if (!Proved(best, value, bound, problem) && !enough.IsCancellationRequested)
        {
            Offer(PricedFit.Of(problem, share, missing, book, laid.Centre, enough));
            if (
                !Proved(best, value, bound, problem)
                && Decisive(problem, share, laid, value) is { } mix
            )
            {
                Offer(WholeMix.Of(problem, share, missing, book, mix, value, Effort, enough));
            }
        }

        var chance = new Random(seed);
        int round = 0,
            idle = 0;
        bool fine = false;
        while (
            round < rounds
            && !enough.IsCancellationRequested
            && !Proved(best, value, bound, problem)
        )
        {
            round++;
            double before = value;
            Offer(
                Improving.Once(problem, share, missing, book, laid.Centre, best, chance, enough),
                round
            );
            idle = value < before ? 0 : idle + 1;
            if (idle < Idle || fine || enough.IsCancellationRequested)
            {
                continue;
            }

            // Nothing more is found board by board: better prices, which also raise the bound, and a plan by them.
            fine = true;
            laid = ColumnSearch.Run(
                problem,
                share,
                missing,
                best.Rows.Concat(laid.Mix.Rows.Where(r => r.Used > 0).Select(r => r.Row)),
                laid.Centre,
                Placed(problem, share, best),
                ColumnRounds,
                value,
                0,
                enough,
                fine: true
            );
            bound = Math.Max(bound, DualBound.Raised(problem, laid.Bound));
            report(round, best, bound);
            Offer(PricedFit.Of(problem, share, missing, book, laid.Centre, enough), round);
        }

        return new(best, bound, round);
    }

    /// <summary>More than any board, and more for a large thing than for a small one: nothing is left out that any board could give.</summary>
    private static double Missing(NestProblem problem, NestItem item) =>
        problem.DearestBoard * (2 + (item.AreaMm2 / problem.Items.Max(i => i.AreaMm2)));

    /// <summary>All rows that the next better plan can be made of, with the rippings found; null where they are too many to mix at once.</summary>
    private static MasterMix? Decisive(
        NestProblem problem,
        Share share,
        ColumnResult columns,
        double value
    )
    {
        if (problem.Items.Length > MixedItems)
        {
            return null;
        }

        double better = value - (DualBound.Measure(problem) ?? 0);
        List<PricedRow> rows = RowPricing.Near(
            problem,
            share,
            columns.Centre,
            Math.Max(0, better - columns.Bound) + (1e-4 * problem.DearestBoard),
            MixedRows / 10,
            NearSteps
        );
        return rows.Count > MixedRows
            ? null
            : new(columns.Mix.Rippings, [.. rows.Select(r => new MixedRow(r.Row, r.Kind, 0))]);
    }

    /// <summary>Of what is placed only: a bound on a plan that leaves something out says nothing about the boards that it uses.</summary>
    private static Share Placed(NestProblem problem, Share share, Cutting best)
    {
        int[] counts = best.Counts(problem);
        return share with { Items = [.. counts] };
    }

    private static bool Proved(Cutting best, double value, double bound, NestProblem problem) =>
        value <= bound + (1e-6 * problem.DearestBoard) && !best.Boards.IsEmpty;
}

/// <param name="Bound">No plan in rows of what is placed costs less.</param>
/// <param name="Rounds">Of improvement.</param>
internal sealed record NestResult(Cutting Cutting, double Bound, int Rounds);
