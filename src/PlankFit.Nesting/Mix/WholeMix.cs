using System.Collections.Immutable;
using System.Globalization;
using Google.OrTools.Sat;

namespace PlankFit.Nesting;

/// <summary>The cheapest mix of whole rippings and rows among those that were found, by CP-SAT.</summary>
internal static class WholeMix
{
    /// <summary>The solver reckons in whole numbers: costs in so many parts of the dearest board.</summary>
    private const double Parts = 1e6;

    /// <param name="below">Only a mix cheaper than this is of use.</param>
    /// <param name="effort">The solver's own measure of work, about a second of it each: the same answer on any machine.</param>
    /// <returns>Null where none was found.</returns>
    public static Cutting? Of(
        NestProblem problem,
        Share share,
        double[] missing,
        RowBook book,
        MasterMix mix,
        double below,
        double effort,
        CancellationToken enough
    )
    {
        var model = new CpModel();
        long Cost(double cost) => (long)Math.Round(cost / problem.DearestBoard * Parts);
        var cost = LinearExpr.NewBuilder();
        IntVar[] rippings =
        [
            .. mix.Rippings.Select(r => model.NewIntVar(0, share.Boards[r.Board], "")),
        ];
        IntVar[] rows =
        [
            .. mix.Rows.Select(r =>
                model.NewIntVar(0, r.Row.Items.GroupBy(i => i).Min(g => Most(share, g)), "")
            ),
        ];
        for (int r = 0; r < rippings.Length; r++)
        {
            cost.AddTerm(rippings[r], Cost(problem.Boards[mix.Rippings[r].Board].Cost));
        }

        Things(problem, share, missing, mix, model, rows, cost, Cost);
        foreach (var same in Enumerable.Range(0, rippings.Length).GroupBy(r => mix.Rippings[r].Board))
        {
            model.Add(LinearExpr.Sum(same.Select(r => rippings[r])) <= share.Boards[same.Key]);
        }

        Strips(problem, mix, model, rippings, rows);
        // Only what is cheaper is of use, and the solver need not look for anything else.
        model.Add(cost < Cost(below));
        model.Minimize(cost);
        var solver = new CpSolver
        {
            StringParameters = string.Create(
                CultureInfo.InvariantCulture,
                $"num_workers:1,random_seed:1,max_deterministic_time:{effort}"
            ),
        };
        using CancellationTokenRegistration stop = enough.Register(solver.StopSearch);
        CpSolverStatus status = solver.Solve(model);
        if (Environment.GetEnvironmentVariable("V")=="2") Console.WriteLine($"   scip {status} {solver.WallTime()} rows {mix.Rows.Length} rip {mix.Rippings.Length} obj {solver.ObjectiveValue/Parts*problem.DearestBoard} bound {solver.BestObjectiveBound/Parts*problem.DearestBoard} below {below}");
        if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
        {
            return null;
        }

        return StripDealing.Of(
            problem,
            share,
            book,
            [
                .. rippings.SelectMany(
                    (v, r) =>
                        Enumerable.Repeat(
                            (mix.Rippings[r].Board, mix.Rippings[r].Ripping),
                            (int)solver.Value(v)
                        )
                ),
            ],
            [
                .. rows.SelectMany(
                    (v, r) =>
                        Enumerable.Repeat(
                            (mix.Rows[r].Row, mix.Rows[r].Kind),
                            (int)solver.Value(v)
                        )
                ),
            ]
        );
    }

    /// <summary>Every thing is in some row, or left out at its price.</summary>
    private static void Things(
        NestProblem problem,
        Share share,
        double[] missing,
        MasterMix mix,
        CpModel model,
        IntVar[] rows,
        LinearExprBuilder cost,
        Func<double, long> price
    )
    {
        var items = new LinearExprBuilder?[problem.Items.Length];
        for (int r = 0; r < rows.Length; r++)
        {
            foreach (IGrouping<int, int> same in mix.Rows[r].Row.Items.GroupBy(i => i))
            {
                (items[same.Key] ??= LinearExpr.NewBuilder()).AddTerm(rows[r], same.Count());
            }
        }

        for (int i = 0; i < items.Length; i++)
        {
            if (share.Items[i] > 0)
            {
                IntVar left = model.NewIntVar(0, share.Items[i], "");
                cost.AddTerm(left, price(missing[i]));
                LinearExprBuilder laid = items[i] ?? LinearExpr.NewBuilder();
                model.Add(laid.AddTerm(left, 1) >= share.Items[i]);
            }
        }
    }

    /// <summary>Of no kind are there more rows that need a length than strips that have it.</summary>
    private static void Strips(
        NestProblem problem,
        MasterMix mix,
        CpModel model,
        IntVar[] rippings,
        IntVar[] rows
    )
    {
        for (int k = 0; k < problem.Kinds; k++)
        {
            int kind = k;
            var needs = Enumerable
                .Range(0, rows.Length)
                .Where(r => mix.Rows[r].Kind == kind)
                .ToLookup(r => problem.Bucket(kind, mix.Rows[r].Row.LengthMm));
            if (needs.Count == 0)
            {
                continue;
            }

            var gives = (
                from r in Enumerable.Range(0, rippings.Length)
                let board = problem.Boards[mix.Rippings[r].Board]
                from lane in mix.Rippings[r].Ripping.Lanes
                where problem.Kind(lane.Class, board.Sort) == kind
                from stretch in lane.Stretches
                select (r, Bucket: problem.Bucket(kind, stretch.LengthMm))
            ).ToLookup(g => g.Bucket, g => g.r);
            var asked = new List<IntVar>();
            var given = new List<IntVar>();
            for (int j = 0; j < problem.StripLengths(k).Length; j++)
            {
                asked.AddRange(needs[j].Select(r => rows[r]));
                given.AddRange(gives[j].Select(r => rippings[r]));
                if (needs.Contains(j))
                {
                    model.Add(LinearExpr.Sum(asked) <= LinearExpr.Sum(given));
                }
            }
        }
    }

    private static int Most(Share share, IGrouping<int, int> same) =>
        (share.Items[same.Key] + same.Count() - 1) / same.Count();
}
