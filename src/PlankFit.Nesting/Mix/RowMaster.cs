using System.Collections.Immutable;
using Google.OrTools.LinearSolver;
using PlankFit.Nesting.Effort;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Rows;

namespace PlankFit.Nesting.Mix;

/// <summary>
/// The cheapest mix of rippings and rows, in fractions (Gilmore and Gomory, 1961 and 1963, from memory): rippings supply strips, a strip of one length also serves as a
/// shorter one, rows use strips and supply things. Rippings and rows are added as they are found worth while.
/// </summary>
internal sealed class RowMaster : IDisposable
{
    private readonly NestProblem problem;
    private readonly Solver solver = Solver.CreateSolver("GLOP");
    private readonly Constraint?[] items;
    private readonly Constraint?[] boards;
    private readonly Constraint[][] strips;
    private readonly List<(Ripping Ripping, int Board, Variable Used)> rippings = [];
    private readonly List<(Row Row, int Kind, Variable Used)> rows = [];
    private readonly List<(int Item, Variable Left)> left = [];
    private readonly HashSet<string> known = [];

    // Read at once after solving: the solver forgets them, with a line on standard error, as soon as anything is added.
    private double[] rippingShares = [];
    private double[] rowShares = [];

    /// <param name="missing">By item, what leaving one out costs: more than any board.</param>
    public RowMaster(NestProblem problem, Share share, double[] missing)
    {
        this.problem = problem;
        solver.Objective().SetMinimization();
        items = new Constraint?[problem.Items.Length];
        for (int i = 0; i < items.Length; i++)
        {
            if (share.Items[i] > 0)
            {
                items[i] = solver.MakeConstraint(share.Items[i], double.PositiveInfinity);
                Variable unplaced = solver.MakeNumVar(0, double.PositiveInfinity, "");
                items[i]!.SetCoefficient(unplaced, 1);
                solver.Objective().SetCoefficient(unplaced, missing[i]);
                left.Add((i, unplaced));
            }
        }

        boards = new Constraint?[problem.Boards.Length];
        for (int b = 0; b < boards.Length; b++)
        {
            if (share.Boards[b] > 0)
            {
                boards[b] = solver.MakeConstraint(-share.Boards[b], double.PositiveInfinity);
            }
        }

        strips = new Constraint[problem.Kinds][];
        for (int k = 0; k < problem.Kinds; k++)
        {
            int n = problem.StripLengths(k).Length;
            strips[k] =
            [
                .. Enumerable
                    .Range(0, n)
                    .Select(_ => solver.MakeConstraint(0, double.PositiveInfinity)),
            ];
            for (int j = 0; j + 1 < n; j++)
            {
                Variable shorter = solver.MakeNumVar(0, double.PositiveInfinity, "");
                strips[k][j].SetCoefficient(shorter, -1);
                strips[k][j + 1].SetCoefficient(shorter, 1);
            }
        }
    }

    public int Rows => rows.Count;

    /// <returns>False where it is there already.</returns>
    public bool Add(Row row, int kind)
    {
        int bucket = problem.Bucket(kind, row.LengthMm);
        if (bucket < 0 || !known.Add($"r{kind}/{bucket}/{row.Key}"))
        {
            return false;
        }

        Variable used = solver.MakeNumVar(0, double.PositiveInfinity, "");
        strips[kind][bucket].SetCoefficient(used, -1);
        foreach (IGrouping<int, int> same in row.Parts.GroupBy(i => i))
        {
            items[same.Key]!.SetCoefficient(used, same.Count());
        }

        rows.Add((row, kind, used));
        return true;
    }

    /// <returns>False where one that supplies the same strips is there already.</returns>
    public bool Add(Ripping ripping, int board)
    {
        int sort = problem.Boards[board].Sort;
        var supply = new SortedDictionary<(int Kind, int Bucket), int>();
        foreach (RippedLane lane in ripping.Lanes)
        {
            int kind = problem.Kind(lane.Class, sort);
            foreach (ClearStretch stretch in lane.Stretches)
            {
                (int, int) key = (kind, problem.Bucket(kind, stretch.LengthMm));
                supply[key] = supply.GetValueOrDefault(key) + 1;
            }
        }

        if (
            supply.Count == 0
            || !known.Add(
                $"b{board}:{string.Join(' ', supply.Select(s => $"{s.Key.Kind}/{s.Key.Bucket}*{s.Value}"))}"
            )
        )
        {
            return false;
        }

        Variable used = solver.MakeNumVar(0, double.PositiveInfinity, "");
        solver.Objective().SetCoefficient(used, problem.Boards[board].Cost);
        boards[board]!.SetCoefficient(used, -1);
        foreach (((int kind, int bucket), int count) in supply)
        {
            strips[kind][bucket].SetCoefficient(used, count);
        }

        rippings.Add((ripping, board, used));
        return true;
    }

    /// <returns>Null where it was stopped, or where the solver finds no way even from the beginning: what was found before it stands.</returns>
    public MasterPrices? Solve(Patience patience)
    {
        if (patience.IsOver)
        {
            return null;
        }

        using CancellationTokenRegistration stop = patience.Enough.Register(() =>
            solver.InterruptSolve()
        );
        Solver.ResultStatus status = solver.Solve();
        if (status != Solver.ResultStatus.OPTIMAL && patience.IsOver)
        {
            return null;
        }

        if (status != Solver.ResultStatus.OPTIMAL)
        {
            // Once in a while the solver loses its way from where it stood: it begins anew, the other way round.
            using var anew = new MPSolverParameters();
            anew.SetIntegerParam(
                MPSolverParameters.IntegerParam.INCREMENTALITY,
                (int)MPSolverParameters.IncrementalityValues.INCREMENTALITY_OFF
            );
            anew.SetIntegerParam(
                MPSolverParameters.IntegerParam.LP_ALGORITHM,
                (int)MPSolverParameters.LpAlgorithmValues.DUAL
            );
            if (solver.Solve(anew) != Solver.ResultStatus.OPTIMAL)
            {
                return null;
            }
        }

        rippingShares = [.. rippings.Select(r => r.Used.SolutionValue())];
        rowShares = [.. rows.Select(r => r.Used.SolutionValue())];
        return new(
            solver.Objective().Value(),
            [.. items.Select(c => c is null ? 0 : Math.Max(0, c.DualValue()))],
            [.. boards.Select(c => c is null ? 0 : Math.Max(0, c.DualValue()))],
            [.. strips.Select(k => k.Select(c => Math.Max(0, c.DualValue())).ToImmutableArray())]
        );
    }

    /// <summary>All rows and rippings found, with the share that the last solution has of each; none of what was added after it.</summary>
    public MasterMix Mix() =>
        new(
            [
                .. rippings.Select(
                    (r, i) =>
                        new MixedRipping(
                            r.Ripping,
                            r.Board,
                            i < rippingShares.Length ? rippingShares[i] : 0
                        )
                ),
            ],
            [
                .. rows.Select(
                    (r, i) => new MixedRow(r.Row, r.Kind, i < rowShares.Length ? rowShares[i] : 0)
                ),
            ]
        );

    public void Dispose() => solver.Dispose();
}

internal sealed record MasterMix(
    ImmutableArray<MixedRipping> Rippings,
    ImmutableArray<MixedRow> Rows
);

internal sealed record MixedRipping(Ripping Ripping, int Board, double Used);

internal sealed record MixedRow(Row Row, int Kind, double Used);
