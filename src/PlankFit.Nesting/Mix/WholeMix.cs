using System.Globalization;
using Google.OrTools.LinearSolver;
using PlankFit.Nesting.Effort;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Rows;

namespace PlankFit.Nesting.Mix;

/// <summary>The cheapest mix of whole rippings and rows among those that were found, by SCIP.</summary>
internal static class WholeMix
{
    /// <summary>A better mix must save this part of the dearest board.</summary>
    private const double Better = 1e-7;

    /// <param name="below">Only a mix cheaper than this is of use.</param>
    /// <param name="effort">A measure of how long the search goes on: the same answer on any machine.</param>
    /// <returns>Null where none was found.</returns>
    public static CuttingPlan? Of(
        NestLot lot,
        MasterMix mix,
        double below,
        double effort,
        Patience patience
    )
    {
        if (patience.IsOver)
        {
            return null;
        }

        (NestProblem problem, Share share, double[] missing, RowBook book) = lot;
        using var solver = Solver.CreateSolver("SCIP");
        solver.Objective().SetMinimization();
        double unit = problem.DearestBoard;
        var items = new Constraint?[problem.Items.Length];
        for (int i = 0; i < items.Length; i++)
        {
            if (share.Items[i] > 0)
            {
                items[i] = solver.MakeConstraint(share.Items[i], double.PositiveInfinity);
                Variable left = solver.MakeIntVar(0, share.Items[i], "");
                items[i]!.SetCoefficient(left, 1);
                solver.Objective().SetCoefficient(left, missing[i] / unit);
            }
        }

        var boards = new Constraint?[problem.Boards.Length];
        var strips = new SortedDictionary<(int Kind, int Bucket), Constraint>();
        var rippings = mix
            .Rippings.Select(r =>
            {
                Variable used = solver.MakeIntVar(0, share.Boards[r.Board], "");
                solver.Objective().SetCoefficient(used, problem.Boards[r.Board].Cost / unit);
                boards[r.Board] ??= solver.MakeConstraint(0, share.Boards[r.Board]);
                boards[r.Board]!.SetCoefficient(used, 1);
                foreach (RippedLane lane in r.Ripping.Lanes)
                {
                    int kind = problem.Kind(lane.Class, problem.Boards[r.Board].Sort);
                    foreach (ClearStretch stretch in lane.Stretches)
                    {
                        Constraint at = At(kind, problem.Bucket(kind, stretch.LengthMm));
                        at.SetCoefficient(used, at.GetCoefficient(used) + 1);
                    }
                }

                return (r, used);
            })
            .ToList();
        var rows = mix
            .Rows.Select(r =>
            {
                int most = r.Row.Parts.GroupBy(i => i).Min(g => Most(share, g));
                Variable used = solver.MakeIntVar(0, most, "");
                At(r.Kind, problem.Bucket(r.Kind, r.Row.LengthMm)).SetCoefficient(used, -1);
                foreach (IGrouping<int, int> same in r.Row.Parts.GroupBy(i => i))
                {
                    items[same.Key]!.SetCoefficient(used, same.Count());
                }

                return (r, used);
            })
            .ToList();
        Constraint At(int kind, int bucket)
        {
            if (!strips.TryGetValue((kind, bucket), out Constraint? at))
            {
                at = strips[(kind, bucket)] = solver.MakeConstraint(0, double.PositiveInfinity);
            }

            return at;
        }

        // A strip of one length also serves as the next shorter one that is spoken of.
        foreach (
            (
                KeyValuePair<(int Kind, int Bucket), Constraint> First,
                KeyValuePair<(int Kind, int Bucket), Constraint> Second
            ) pair in strips.Zip(strips.Skip(1))
        )
        {
            if (pair.First.Key.Kind == pair.Second.Key.Kind)
            {
                Variable shorter = solver.MakeNumVar(0, double.PositiveInfinity, "");
                pair.First.Value.SetCoefficient(shorter, -1);
                pair.Second.Value.SetCoefficient(shorter, 1);
            }
        }

        // Only what is cheaper is of use, and the solver need not look for anything else.
        Constraint cheaper = solver.MakeConstraint(
            double.NegativeInfinity,
            (below / unit) - Better
        );
        foreach (Variable v in solver.variables())
        {
            double cost = solver.Objective().GetCoefficient(v);
            if (cost != 0)
            {
                cheaper.SetCoefficient(v, cost);
            }
        }

        // Planes that cut off fractions cost these mixes ten times what they save. Ctrl-C is the program's own affair: the solver would catch it, and say so in words of its own.
        string limit = string.Create(
            CultureInfo.InvariantCulture,
            $"limits/nodes = {(int)(effort * 1000)}\nrandomization/randomseedshift = 0\nseparating/maxroundsroot = 2\nseparating/maxrounds = 0\nmisc/catchctrlc = FALSE\ndisplay/verblevel = 0\n"
        );
        solver.SetSolverSpecificParametersAsString(limit);
        using CancellationTokenRegistration stop = patience.Enough.Register(() =>
            solver.InterruptSolve()
        );
        Solver.ResultStatus status = solver.Solve();
        if (status is not (Solver.ResultStatus.OPTIMAL or Solver.ResultStatus.FEASIBLE))
        {
            return null;
        }

        CuttingPlan cutting = StripDealing.Of(
            problem,
            share,
            book,
            [.. rippings.SelectMany(r => Times((r.r.Board, r.r.Ripping), r.used))],
            [.. rows.SelectMany(r => Times((r.r.Row, r.r.Kind), r.used))]
        );
        return cutting;
    }

    private static int Most(Share share, IGrouping<int, int> same) =>
        share.Items[same.Key] / same.Count() + (share.Items[same.Key] % same.Count() > 0 ? 1 : 0);

    private static IEnumerable<T> Times<T>(T value, Variable used) =>
        Enumerable.Repeat(value, (int)Math.Round(used.SolutionValue()));
}
