using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Trust;

namespace PlankFit.Planking.Taping;

/// <summary>
/// What is known of both sides together before anything is taped: starboard's cells, then port's. One table was read and lofted for both; a frame that stands to one side
/// or heels moves them oppositely, one that stands high or along moves both alike, and the keel bends sideways and up as one piece. What is made of each side by itself,
/// and how frames swell, is its own (our own proposals, no source).
/// </summary>
public static class TwoSides
{
    public static Matrix<double> Of(TrustSpec spec, TableCells cells)
    {
        Matrix<double> side = TablePrior.Of(spec, cells),
            cross = Cross(spec, cells);
        int n = cells.Count;
        Matrix<double> both = Matrix<double>.Build.Dense(2 * n, 2 * n);
        both.SetSubMatrix(0, 0, side);
        both.SetSubMatrix(n, n, side);
        both.SetSubMatrix(0, n, cross);
        both.SetSubMatrix(n, 0, cross);
        return both;
    }

    private static Matrix<double> Cross(TrustSpec spec, TableCells cells)
    {
        double read = Square(spec.ReadingSigma) + Square(spec.LoftingSigma);
        Matrix<double> trend = TablePrior.Trend(spec, cells),
            cross = Matrix<double>.Build.Dense(
                cells.Count,
                cells.Count,
                (i, j) =>
                    (i == j && cells.Cells[i].Kind != CellKind.Position ? read : 0)
                    + (Sense(cells.Cells[i]) * trend[i, j])
            );
        foreach (SharedCause cause in SharedCause.Of(spec, cells))
        {
            double sense = cause.Kind is CauseKind.Athwart or CauseKind.Heel ? -1 : 1;
            cross += sense * cause.Sigma * cause.Sigma * cause.Effect.OuterProduct(cause.Effect);
        }

        return cross;
    }

    /// <summary>How a swelling of one side's line goes with the other's.</summary>
    private static int Sense(TableCell cell) =>
        (cell.OfKeel, cell.Kind) switch
        {
            (true, CellKind.Height) => 1,
            (true, CellKind.HalfBreadth) => -1,
            _ => 0,
        };

    private static double Square(double x) => x * x;
}
