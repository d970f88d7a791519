using MathNet.Numerics.LinearAlgebra;

namespace PlankFit.Planking.Trust;

/// <summary>
/// What is known of the errors of a table before anything is measured: the covariance S of p, mm². Each cell was read and lofted, and is made, by itself; what stands
/// on a frame moves with it; lines swell smoothly. Errors that come together are one cause each, and their products stand beside the diagonal (JCGM 100:2008, 5.2
/// and F.1.2).
/// </summary>
public static class TablePrior
{
    /// <summary>S, of the size of the cells, symmetric and positive semidefinite, mm².</summary>
    public static Matrix<double> Of(TrustSpec spec, TableCells cells)
    {
        Matrix<double> s = Alone(spec, cells) + Trend(spec, cells);
        foreach (SharedCause cause in SharedCause.Of(spec, cells))
        {
            s += cause.Sigma * cause.Sigma * cause.Effect.OuterProduct(cause.Effect);
        }

        return s;
    }

    /// <summary>What each cell is out by for itself: the reading's last unit, lofting, making.</summary>
    public static Matrix<double> Alone(TrustSpec spec, TableCells cells) =>
        Matrix<double>.Build.DenseOfDiagonalVector(
            Vector<double>.Build.Dense(cells.Count, i => Variance(spec, cells.Cells[i]))
        );

    private static double Variance(TrustSpec spec, TableCell cell)
    {
        if (cell.Kind == CellKind.Position)
        {
            return 0;
        }

        double made = TrustSpec.Sigma(
            cell.OfKeel ? spec.KeelMadeWithinMm : spec.FramesMadeWithinMm
        );
        return Square(spec.ReadingSigma) + Square(spec.LoftingSigma) + Square(made);
    }

    /// <summary>Smooth swellings along the lines: s² exp(-d² / 2 l²) between two cells d apart of one kind, both of the keel or both of what stands on it, l a part of the length.</summary>
    public static Matrix<double> Trend(TrustSpec spec, TableCells cells)
    {
        double[] x = [.. cells.Cells.Select(cells.PositionOf)];
        double over = spec.Bends.Over * (x.Max() - x.Min());
        return Matrix<double>.Build.Dense(
            cells.Count,
            cells.Count,
            (i, j) =>
            {
                (TableCell a, TableCell b) = (cells.Cells[i], cells.Cells[j]);
                if (a.Kind != b.Kind || a.OfKeel != b.OfKeel)
                {
                    return 0;
                }

                double s = TrustSpec.Sigma(Swelling(spec.Bends, a));
                return s * s * Math.Exp(-Square((x[i] - x[j]) / over) / 2);
            }
        );
    }

    /// <summary>The keel's side and its height bend by themselves; what stands on the keel swells as one.</summary>
    private static double Swelling(LineBends bends, TableCell cell) =>
        (cell.Kind, cell.OfKeel) switch
        {
            (CellKind.HalfBreadth, true) => bends.KeelMm,
            (CellKind.Height, true) => bends.KeelUpMm,
            (CellKind.HalfBreadth, false) => bends.ChineMm,
            _ => 0,
        };

    private static double Square(double x) => x * x;
}
