using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Laying;

namespace PlankFit.Planking.Trust;

/// <summary>
/// How the numbers of a plan move with the cells of its table, J = d(numbers) / dp in mm or degrees a mm, with every choice kept: how many planks there are, which are
/// tapered, where the master was moved to, which edge each end meets. The master lies by its two seams' marks along keel and chine, as the sheets have the builder lay
/// it. By central differences of the planks laid again, 1 mm either way: within 1e-4 mm a mm on a prism, 0.002 on hulls.
/// </summary>
public sealed class Sensitivities
{
    /// <summary>How far a cell is moved either way, mm: as much as tables are out by, so that a slope which is not the same to both sides is told at its mean.</summary>
    private const double StepMm = 1;

    private readonly Dictionary<SureNumber, int> index;

    private Sensitivities(
        TableCells cells,
        ImmutableArray<SureNumber> numbers,
        Vector<double> drawn,
        Matrix<double> j,
        Matrix<double> stock
    )
    {
        (Cells, Numbers, Drawn, J, Stock) = (cells, numbers, drawn, j, stock);
        index = numbers.Select((n, i) => (n, i)).ToDictionary(n => n.n, n => n.i);
    }

    public TableCells Cells { get; }

    /// <summary>Row by row: plank by plank, each number in the order of its kinds; then the keel's half-widths.</summary>
    public ImmutableArray<SureNumber> Numbers { get; }

    /// <summary>The numbers as drawn; NaN for one that a plank does not have.</summary>
    public Vector<double> Drawn { get; }

    /// <summary>Numbers by cells. NaN in the row of a number that is not there, or not on all of the hulls that lie so near: one whose end goes from edge to edge.</summary>
    public Matrix<double> J { get; }

    /// <summary>Numbers by the stock's width and the thickness of every layer of planks, all stock alike.</summary>
    public Matrix<double> Stock { get; }

    /// <summary>The row of a number; null where it has no slope.</summary>
    public int? IndexOf(SureNumber number) =>
        index.TryGetValue(number, out int i) && Has(i) ? i : null;

    /// <summary>Whether a row is whole.</summary>
    public bool Has(int row) => !double.IsNaN(J[row, 0]);

    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static Sensitivities Of(
        Planked planked,
        IProgress<PlanProgress>? progress = null,
        CancellationToken stop = default
    ) => Of(HeldPlan.Of(planked, stop), progress, stop);

    internal static Sensitivities Of(
        HeldPlan held,
        IProgress<PlanProgress>? progress,
        CancellationToken stop
    )
    {
        PlankingJob job = held.Job;
        var cells = TableCells.Of(job);
        const int stockSizes = 2;
        int done = 0,
            runs = cells.Count + stockSizes;
        double[][] slopes = new double[runs][];
        double[] drawn = held.On(job);
        PlankingJob Changed(int run, double by) =>
            run < cells.Count
                ? cells.Moved(job, Vector<double>.Build.Dense(cells.Count, i => i == run ? by : 0))
                : Stocked(job, run == cells.Count ? by : 0, run == cells.Count ? 0 : by);
        Parallel.For(
            0,
            runs,
            new ParallelOptions { CancellationToken = stop },
            run =>
            {
                double[] more = held.On(Changed(run, StepMm)),
                    less = held.On(Changed(run, -StepMm));
                slopes[run] = [.. more.Zip(less, (a, b) => (a - b) / (2 * StepMm))];
                int sofar = Interlocked.Increment(ref done);
                progress?.Report(
                    new(
                        $"how the planks hang on the table: {sofar} of {runs}",
                        (double)sofar / runs
                    )
                );
            }
        );
        bool[] whole =
        [
            .. Enumerable
                .Range(0, drawn.Length)
                .Select(i => double.IsFinite(drawn[i]) && slopes.All(s => double.IsFinite(s[i]))),
        ];
        ImmutableArray<SureNumber> numbers = held.Numbers;
        double At(int number, int run) =>
            !whole[number] ? double.NaN
            : run < cells.Count
                ? slopes[run][number]
                    * OfEnd(numbers[number].Kind, cells.Cells[run], job.Hull.Panel.Upper)
            : slopes[run][number];
        return new(
            cells,
            numbers,
            Vector<double>.Build.DenseOfArray(drawn),
            Matrix<double>.Build.Dense(drawn.Length, cells.Count, At),
            Matrix<double>.Build.Dense(drawn.Length, stockSizes, (i, j) => At(i, cells.Count + j))
        );
    }

    /// <summary>How much of what an end is out by on the whole, half of the length, it is out by for one cell: all of the length for its own edge's, nothing for the other's.</summary>
    private static double OfEnd(NumberKind kind, TableCell cell, string upper)
    {
        if (
            kind is not (NumberKind.Inboard or NumberKind.Outboard)
            || cell.Kind == CellKind.Position
            || !cell.OfKeel && cell.Line != upper
        )
        {
            return 1;
        }

        return cell.OfKeel == (kind == NumberKind.Inboard) ? 2 : 0;
    }

    /// <summary>The job with stock so much wider and thicker, mm.</summary>
    private static PlankingJob Stocked(PlankingJob job, double wider, double thicker) =>
        job with
        {
            Layers =
            [
                .. job.Layers.Select(l =>
                    l is PlankLayerSpec p
                        ? p with
                        {
                            WidthMm = p.WidthMm + wider,
                            ThicknessMm = p.ThicknessMm + thicker,
                        }
                        : l
                ),
            ],
        };
}
