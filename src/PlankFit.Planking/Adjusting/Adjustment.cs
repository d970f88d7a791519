using MathNet.Numerics.LinearAlgebra;

namespace PlankFit.Planking.Adjusting;

/// <summary>
/// Unknowns as they are likeliest once readings are taken into account: least squares with what was known before (Gauss-Newton; Rodgers 2000, Inverse Methods,
/// 5.3, from memory). With d = y - h(p) + H p and C = H S H' + R: p = S H' C⁻¹ d, and the covariance in Joseph's form, which stays
/// symmetric and positive.
/// </summary>
/// <param name="After">Values and covariance afterwards.</param>
/// <param name="Slopes">Of the readings, at those values.</param>
/// <param name="Innovations">By which each reading differs from what was known before, d.</param>
/// <param name="Weights">C⁻¹.</param>
/// <param name="Rounds">How many were taken.</param>
public sealed record Adjustment(
    Estimate After,
    Matrix<double> Slopes,
    Vector<double> Innovations,
    Matrix<double> Weights,
    int Rounds
)
{
    private const int MostRounds = 12;

    /// <summary>Of a standard deviation before: where the next round moves no value by more, it is done.</summary>
    private const double Done = 1e-4;

    private const int MostHalvings = 8;

    /// <summary>d' C⁻¹ d: spread as chi-square with as many degrees as readings, where what was known and the readings' errors are as they are said to be.</summary>
    public double Misfit => Innovations * (Weights * Innovations);

    public static Adjustment Of(Estimate before, Observations readings)
    {
        // Values are the unknowns' root of covariance times z: nothing is inverted that may be singular, such as cells that are known for certain.
        Matrix<double> root = Root(before.Covariance);
        Vector<double> z = Vector<double>.Build.Dense(root.ColumnCount);
        Matrix<double> errorsInverse = Inverse(readings.Errors);
        double at = Cost(z);
        int rounds = 0;
        Matrix<double> h = readings.Slopes(before.Values);
        for (bool more = true; more && rounds < MostRounds; rounds++)
        {
            h = rounds == 0 ? h : readings.Slopes(Values(z));
            Vector<double> next = Step(z, h);
            double cost = Cost(next);
            for (int k = 0; cost > at * (1 + 1e-12) && k < MostHalvings; k++)
            {
                next = 0.5 * (z + next);
                cost = Cost(next);
            }

            // Where no part of the step is any better it has settled: the same step would come again.
            bool better = cost <= at * (1 + 1e-12);
            more = better && (next - z).AbsoluteMaximum() > Done;
            (z, at) = better ? (next, cost) : (z, at);
        }

        Vector<double> values = Values(z);
        // Those of the last round, which moved nothing any more.
        Matrix<double> weights = Weighed(h);
        return new(
            new(values, Joseph(before.Covariance, h, weights, readings.Errors)),
            h,
            Innovation(z, h),
            weights,
            rounds
        );

        Vector<double> Values(Vector<double> of) => before.Values + (root * of);
        Vector<double> Innovation(Vector<double> of, Matrix<double> slopes) =>
            readings.Read - readings.Expected(Values(of)) + (slopes * (root * of));
        Matrix<double> Weighed(Matrix<double> slopes) =>
            Inverse((slopes * before.Covariance * slopes.Transpose()) + readings.Errors);
        Vector<double> Step(Vector<double> from, Matrix<double> slopes) =>
            root.TransposeThisAndMultiply(
                slopes.TransposeThisAndMultiply(Weighed(slopes) * Innovation(from, slopes))
            );

        double Cost(Vector<double> of)
        {
            Vector<double> miss = readings.Read - readings.Expected(Values(of));
            return (of * of) + (miss * (errorsInverse * miss));
        }
    }

    /// <summary>(I - K H) S (I - K H)' + K R K', with K = S H' C⁻¹.</summary>
    private static Matrix<double> Joseph(
        Matrix<double> s,
        Matrix<double> h,
        Matrix<double> weights,
        Matrix<double> errors
    )
    {
        Matrix<double> gain = s * h.Transpose() * weights,
            left = Matrix<double>.Build.DenseIdentity(s.RowCount) - (gain * h),
            sum = (left * s * left.Transpose()) + (gain * errors * gain.Transpose());
        return 0.5 * (sum + sum.Transpose());
    }

    private static Matrix<double> Inverse(Matrix<double> c) =>
        c.Cholesky().Solve(Matrix<double>.Build.DenseIdentity(c.RowCount));

    /// <summary>L with L L' = S, for any S without negative eigenvalues but rounding's own.</summary>
    private static Matrix<double> Root(Matrix<double> s)
    {
        MathNet.Numerics.LinearAlgebra.Factorization.Evd<double> evd = s.Evd(
            Symmetricity.Symmetric
        );
        Vector<double> lengths = evd.EigenValues.Map(e => Math.Sqrt(Math.Max(0, e.Real)));
        return evd.EigenVectors * Matrix<double>.Build.DenseOfDiagonalVector(lengths);
    }
}
