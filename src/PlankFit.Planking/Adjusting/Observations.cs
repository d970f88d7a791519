using MathNet.Numerics.LinearAlgebra;

namespace PlankFit.Planking.Adjusting;

/// <summary>
/// Values that were read, the covariance of what they are out by, and what they should be for given unknowns, with its slopes: a row a reading, a column an
/// unknown.
/// </summary>
public sealed record Observations(
    Vector<double> Read,
    Matrix<double> Errors,
    Func<Vector<double>, Vector<double>> Expected,
    Func<Vector<double>, Matrix<double>> Slopes
)
{
    /// <summary>Readings that go with the unknowns in proportion.</summary>
    public static Observations Linear(
        Vector<double> read,
        Matrix<double> errors,
        Matrix<double> slopes
    ) => new(read, errors, p => slopes * p, _ => slopes);

    public int Count => Read.Count;

    /// <summary>Some of them, by their places in the row.</summary>
    public Observations Only(IReadOnlyList<int> kept) =>
        kept.Count == Count
            ? this
            : new(
                Vector<double>.Build.DenseOfEnumerable(kept.Select(i => Read[i])),
                Matrix<double>.Build.Dense(
                    kept.Count,
                    kept.Count,
                    (i, j) => Errors[kept[i], kept[j]]
                ),
                p =>
                {
                    Vector<double> all = Expected(p);
                    return Vector<double>.Build.DenseOfEnumerable(kept.Select(i => all[i]));
                },
                p =>
                {
                    Matrix<double> all = Slopes(p);
                    return Matrix<double>.Build.DenseOfRowVectors(kept.Select(i => all.Row(i)));
                }
            );
}
