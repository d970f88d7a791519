using System.Collections.Immutable;
using PlankFit.Nesting.Effort;
using PlankFit.Nesting.Mix;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Rows;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting.Search;

/// <summary>The search for one material's plan: a plan at once, then a bound, then better plans until there is none, or enough.</summary>
internal sealed class NestSearch
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

    /// <summary>A mix this near to its bound, as a part of it, has prices that make a good plan; one that is half as near again makes a better one.</summary>
    private const double EarlyPrices = 0.05;

    private const double FarBoards = 0.01;

    private readonly NestProblem problem;
    private readonly BoardCosts costs;
    private readonly Patience patience;
    private readonly Action<int, CuttingPlan, Standing> report;
    private readonly Share share;
    private readonly RowBook book;
    private readonly double[] missing;

    /// <summary>Plans and bounds come from two threads.</summary>
    private readonly Lock telling = new();

    private CuttingPlan best = CuttingPlan.None;
    private Worth worth = new(double.PositiveInfinity, double.PositiveInfinity);
    private Bounds bounds;
    private int round;

    private NestSearch(
        NestProblem problem,
        BoardCosts costs,
        Action<int, CuttingPlan, Standing> report,
        Patience patience
    )
    {
        (this.problem, this.costs, this.report, this.patience) = (problem, costs, report, patience);
        share = Share.AllOf(problem);
        book = new(problem.Ends);
        double largest = problem.Items.Max(i => i.AreaMm2);
        // More than any board, and more for a large thing than for a small one: nothing is left out that any board could give.
        missing =
        [
            .. problem.Items.Select(i => problem.DearestBoard * (2 + (i.AreaMm2 / largest))),
        ];
    }

    private NestLot Lot => new(problem, share, missing, book);

    /// <param name="rounds">Of improvement, after the first plans.</param>
    /// <param name="mayChooseAnew">Ends with its first mix where other boards would suit much better.</param>
    /// <param name="report">Told the round, the plan and how it stands whenever something is better.</param>
    public static NestResult Run(
        NestProblem problem,
        BoardCosts costs,
        int seed,
        int rounds,
        bool mayChooseAnew,
        Action<int, CuttingPlan, Standing> report,
        Patience patience
    ) => new NestSearch(problem, costs, report, patience).Run(seed, rounds, mayChooseAnew);

    private NestResult Run(int seed, int rounds, bool mayChooseAnew)
    {
        bool known = problem.Ends.IsWhole;
        if (!known && problem.Ends.IsOfMany)
        {
            // All pitches would take longer than a moment, or than there is time: a plan stands before that, and may be all that there is.
            Offer(FirstFit.Of(problem, share, book, Patience.None));
        }

        known = problem.Ends.WorkOut(patience);
        if (known || best.Boards.IsEmpty || !patience.IsOver)
        {
            Offer(FirstFit.Of(problem, share, book, patience));
        }

        if (best.Boards.IsEmpty)
        {
            return new(best, Now, 0, false);
        }

        Raise(DualBound.ByArea(problem, Placed()));
        // What rows there are is not known where not all pitches are.
        if (patience.IsOver || !known)
        {
            return new(best, Now, 0, patience.IsOver);
        }

        Offer(Priced(MasterPrices.ByArea(problem, share), PricedFit.QuickSteps));
        ColumnResult laid = Columns(null, fine: false);
        if (!IsDone(0) && laid.Paying.Length > 0 && mayChooseAnew && IsFar(laid))
        {
            Offer(Priced(laid.Centre, PricedFit.QuickSteps));
            return new(best, Now, 0, true) { Paying = laid.Paying };
        }

        if (!IsDone(0))
        {
            Offer(Priced(laid.Centre, PricedFit.Steps));
            if (!IsDone(0) && Decisive(laid) is { } mix)
            {
                Offer(WholeMix.Of(Lot, mix, worth.Cost, Effort, patience));
            }
        }

        var chance = new Random(seed);
        int idle = 0;
        bool fine = false;
        while (round < rounds && !patience.IsOver && !IsDone(idle))
        {
            round++;
            Worth before = worth;
            // Where the mix all but settles the plan, going down it settles the rest; where it does not, that takes the time of many other attempts.
            Offer(
                problem.AnyOrder && round % 3 == 1
                    ? Repacking.Once(problem, best, bounds.Cost, book, chance, patience)
                : problem.AnyOrder && round % 3 == 2 || idle >= Idle && fine && round % Idle == 0
                    ? Diving.Once(Lot, laid, chance, patience)
                : Improving.Once(Lot, laid.Centre, best, chance, patience)
            );
            idle = worth.IsBetterThan(before) ? 0 : idle + 1;
            if (idle < Idle || fine || patience.IsOver)
            {
                continue;
            }

            // Nothing more is found board by board: better prices, which also raise the bound, and a plan by them.
            fine = true;
            laid = Columns(laid, fine: true);
            Offer(Priced(laid.Centre, PricedFit.Steps));
        }

        bool more = !IsDone(idle) && (!laid.Whole || idle < Idle);
        Tidy();
        return new(best, Now, round, more) { Paying = laid.Paying };
    }

    /// <summary>Boards that are in the bound only would make the mix so much cheaper that it is better searched with them than made better without.</summary>
    private static bool IsFar(ColumnResult laid) =>
        laid.Prices.Value - laid.Bound.Cost > FarBoards * laid.Prices.Value;

    /// <summary>What is left over in as large a piece as can be, for the same or less.</summary>
    private void Tidy()
    {
        CuttingPlan tidy = Tidying.Of(problem, best, book);
        var its = Worth.Of(problem, share, missing, tidy);
        if (!worth.IsBetterThan(its))
        {
            (best, worth) = (tidy, its);
        }
    }

    private Standing Now =>
        Standing.Of(
            problem,
            costs,
            best,
            bounds,
            !best.Counts(problem).Where((n, i) => n < share.Items[i]).Any()
        );

    private void Offer(CuttingPlan? other)
    {
        if (other is null)
        {
            return;
        }

        var its = Worth.Of(problem, share, missing, other);
        lock (telling)
        {
            if (its.IsBetterThan(worth))
            {
                (best, worth) = (other, its);
                report(round, best, Now);
            }
        }
    }

    private void Raise(Bounds other)
    {
        lock (telling)
        {
            Bounds before = bounds;
            bounds = bounds.Max(other);
            if (bounds != before)
            {
                report(round, best, Now);
            }
        }
    }

    /// <summary>Prices, and the bound by them. Plans are made by the first good ones meanwhile, one after the other: the search for prices asks nothing of them.</summary>
    private ColumnResult Columns(ColumnResult? before, bool fine)
    {
        double near = before is null ? EarlyPrices : 0;
        Task plans = Task.CompletedTask;
        ColumnResult laid;
        try
        {
            laid = ColumnSearch.Run(
                problem,
                share,
                missing,
                new(
                    best.Rows.Concat(
                        before?.Mix.Rows.Where(r => r.Used > 0).Select(r => r.Row) ?? []
                    ),
                    before?.Centre,
                    Placed(),
                    ColumnRounds,
                    worth.Cost,
                    Fine: fine
                ),
                patience,
                better =>
                {
                    Raise(better.Bound);
                    double gap = (better.Prices.Value - better.Bound.Cost) / better.Prices.Value;
                    if (gap <= near)
                    {
                        near = gap / 2;
                        plans = plans.ContinueWith(
                            done =>
                            {
                                done.GetAwaiter().GetResult();
                                Offer(Priced(better.Centre, PricedFit.QuickSteps));
                            },
                            TaskScheduler.Default
                        );
                    }
                }
            );
        }
        finally
        {
            // However prices end, no plan is made behind the back of what comes next.
            plans.GetAwaiter().GetResult();
        }

        Raise(laid.Bound);
        return laid;
    }

    private CuttingPlan Priced(MasterPrices prices, long steps) =>
        PricedFit.Of(Lot, prices, steps, patience);

    /// <summary>The least possible is proved; where wood on hand is spared besides, that much more is tried for it.</summary>
    private bool IsDone(int idle)
    {
        Standing now = Now;
        return now.IsProved(problem)
            && (
                problem.CostsAreAsked
                || now.Measure == NestMeasure.Area
                || idle >= Idle
                || worth.Cost <= bounds.Cost * (1 + 1e-6)
            );
    }

    /// <summary>All rows that the next better plan can be made of, with the rippings found; null where they are too many to mix at once.</summary>
    private MasterMix? Decisive(ColumnResult columns)
    {
        if (problem.Items.Length > MixedItems)
        {
            return null;
        }

        double better =
            worth.Cost
            - (
                problem.CostsAreAsked
                    ? DualBound.Measure(problem.Boards.Select(b => b.Asked)) ?? 0
                    : 0
            );
        List<PricedRow> rows = RowPricing.Near(
            problem,
            share,
            columns.Centre,
            Math.Max(0, better - columns.Bound.Cost) + (1e-4 * problem.DearestBoard),
            MixedRows / 10,
            NearSteps,
            patience
        );
        return rows.Count > MixedRows
            ? null
            : new(columns.Mix.Rippings, [.. rows.Select(r => new MixedRow(r.Row, r.Kind, 0))]);
    }

    /// <summary>Of what is placed only: a bound on a plan that leaves something out says nothing about the boards that it uses.</summary>
    private Share Placed() => share.Bounding(problem) with { Items = [.. best.Counts(problem)] };
}

/// <param name="MoreMayHelp">It was ended while it still found something.</param>
/// <param name="Rounds">Of improvement.</param>
internal sealed record NestResult(
    CuttingPlan Cutting,
    Standing Standing,
    int Rounds,
    bool MoreMayHelp
)
{
    /// <summary>Boards that were left alone and would have paid, the best first.</summary>
    public ImmutableArray<BoardType> Paying { get; init; } = [];
}

/// <summary>What a plan is worth beside another: what is asked for first, then the little that wood costs besides; what is left out costs more than both.</summary>
internal readonly record struct Worth(double Asked, double Cost)
{
    private const double Summing = 1e-9;

    public static Worth Of(NestProblem problem, Share share, double[] missing, CuttingPlan cutting)
    {
        double cost = cutting.Value(problem, share, missing),
            boards = cutting.Cost(problem);
        return new(cutting.Boards.Sum(b => problem.Boards[b.Board].Asked) + cost - boards, cost);
    }

    public bool IsBetterThan(Worth other) =>
        Asked < other.Asked * (1 - Summing)
        || (Asked <= other.Asked * (1 + Summing) && Cost < other.Cost * (1 - Summing));
}
