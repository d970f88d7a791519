using MathNet.Numerics.LinearAlgebra;

namespace PlankFit.Planking.Trust;

/// <summary>
/// How sure the numbers of a plan are: their covariance C = J S J' (JCGM 100:2008, 5.2.2, in matrices), with what the stock's own size adds. Planks share errors, so the
/// whole of it is kept: a difference of two numbers is surer than either.
/// </summary>
public sealed class Sureness
{
    private readonly Dictionary<int, int> rows;
    private Sureness? other;

    private Sureness(
        Sensitivities slopes,
        TrustSpec spec,
        Matrix<double> table,
        Dictionary<int, int> rows,
        Matrix<double> covariance
    )
    {
        (Slopes, Spec, Table, this.rows) = (slopes, spec, table, rows);
        Covariance = covariance;
    }

    public Sensitivities Slopes { get; }

    public TrustSpec Spec { get; }

    /// <summary>S, of the table's cells.</summary>
    public Matrix<double> Table { get; }

    /// <summary>Of all numbers that have slopes, in their order, mm² (degrees², mm degrees).</summary>
    public Matrix<double> Covariance { get; }

    /// <summary>On the table alone: nothing is measured yet.</summary>
    public static Sureness Of(TrustSpec spec, Sensitivities slopes) =>
        Of(spec, slopes, TablePrior.Of(spec, slopes.Cells));

    /// <param name="table">S of the cells: before or after something was measured.</param>
    public static Sureness Of(TrustSpec spec, Sensitivities slopes, Matrix<double> table)
    {
        int[] has = [.. Enumerable.Range(0, slopes.Numbers.Length).Where(slopes.Has)];
        Matrix<double> j = Rows(slopes.J, has),
            stock = Rows(slopes.Stock, has);
        Matrix<double> sizes = Matrix<double>.Build.DenseOfDiagonalArray([
            Square(TrustSpec.Sigma(spec.StockWidthWithinMm)),
            Square(TrustSpec.Sigma(spec.StockThicknessWithinMm)),
        ]);
        Matrix<double> covariance =
            (j * table).TransposeAndMultiply(j) + (stock * sizes).TransposeAndMultiply(stock);
        return new(
            slopes,
            spec,
            table,
            has.Select((row, i) => (row, i)).ToDictionary(r => r.row, r => r.i),
            covariance
        );
    }

    /// <summary>Of two sides that are not known alike: what is told of a number is told of the side on which it is less sure.</summary>
    public static Sureness OfSides(TrustSpec spec, Sensitivities slopes, SidesKnown known)
    {
        Sureness starboard = Of(spec, slopes, known.Starboard);
        return known.Port.Equals(known.Starboard)
            ? starboard
            : new(starboard.Slopes, spec, starboard.Table, starboard.rows, starboard.Covariance)
            {
                other = Of(spec, slopes, known.Port),
            };
    }

    /// <summary>Standard deviation of a number, mm or degrees; null for one without slopes.</summary>
    public double? SigmaOf(SureNumber number) =>
        Place(number) is { } i
            ? Math.Max(Math.Sqrt(Math.Max(0, Covariance[i, i])), other?.SigmaOf(number) ?? 0)
            : null;

    /// <summary>Within which it is 19 times in 20, either way.</summary>
    public double? WithinOf(SureNumber number) => TrustSpec.Within * SigmaOf(number);

    /// <summary>How far two numbers are wrong together, -1 to 1; null where either has no slopes or is not in doubt.</summary>
    public double? Correlation(SureNumber a, SureNumber b) =>
        Place(a) is { } i
        && Place(b) is { } j
        && Covariance[i, i] * Covariance[j, j] is var both
        && both > 0
            ? Covariance[i, j] / Math.Sqrt(both)
            : null;

    private int? Place(SureNumber number) => Slopes.IndexOf(number) is { } row ? rows[row] : null;

    private static Matrix<double> Rows(Matrix<double> of, int[] rows) =>
        Matrix<double>.Build.Dense(rows.Length, of.ColumnCount, (i, j) => of[rows[i], j]);

    private static double Square(double x) => x * x;
}
