using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace PlankFit.Planking.Fairness;

/// <summary>
/// One way in which a fair line may be smooth, as chance would draw it: parts of a row that vary each on its own. Parabolas are left out of all of them, so
/// that a line may rise and bend as it likes.
/// </summary>
/// <param name="Variances">Of each part, for a line of scale 1; times the square of the scale for any other.</param>
/// <param name="Parts">By part and point: what a part takes of each value of the row.</param>
internal sealed record SmoothKind(
    ImmutableArray<double> Variances,
    ImmutableArray<ImmutableArray<double>> Parts
)
{
    /// <summary>How large each part of a row of values is.</summary>
    public double[] Of(IReadOnlyList<double> row) =>
        [
            .. Parts.Select(part =>
            {
                double sum = 0;
                for (int i = 0; i < part.Length; i++)
                {
                    sum += part[i] * row[i];
                }

                return sum;
            }),
        ];
}

/// <summary>
/// The kinds of smooth line that a row is judged against: the third derivative as white noise (whose likeliest curve is the batten of order three), and the
/// third derivative itself running on steadily, a chance value and a random walk from it, as a line drawn by one formula does. A curve whose m-th derivative is
/// white noise varies over x, from the first station on, by K(s, t) = integral of (s-u)^(m-1) (t-u)^(m-1) / (m-1)!² over u from 0 to the lesser of s and t
/// (Wahba, Spline Models for Observational Data, 1990, ch. 1, from memory; held by a test against the energy matrix).
/// </summary>
internal static class SmoothKinds
{
    /// <summary>A line that runs on steadily is let to change its third derivative over its length by about half of what that is.</summary>
    private const double SteadyPart = 2;

    /// <summary>Its fourth derivative is larger by this for the same sweep, so that both kinds are tried over the same scales.</summary>
    private const double SteadyScale = 3;

    /// <param name="x">Strictly increasing, more than three.</param>
    public static ImmutableArray<SmoothKind> On(ReadOnlySpan<double> x)
    {
        int n = x.Length;
        double[] t = new double[n];
        for (int i = 0; i < n; i++)
        {
            t[i] = (x[i] - x[0]) / (x[^1] - x[0]);
        }

        Matrix<double> blind = NoParabola(t);
        Vector<double> cube = Vector<double>.Build.Dense(n, i => Math.Pow(t[i] - 0.5, 3) / 6);
        Matrix<double> steady =
            (SteadyPart * SteadyPart * cube.OuterProduct(cube)) + WhiteDerivative(t, 4);
        return
        [
            Kind(blind, WhiteDerivative(t, 3)),
            Kind(blind, SteadyScale * SteadyScale * steady),
        ];
    }

    /// <summary>K of the summary for m = 3 or 4, by the binomial theorem in closed form.</summary>
    internal static Matrix<double> WhiteDerivative(double[] t, int m)
    {
        double K(double s, double d)
        {
            double sum = 0;
            for (int j = 0; j < m; j++)
            {
                double power = (2 * m) - 1 - j;
                sum += Choose(m - 1, j) * Math.Pow(d, j) * Math.Pow(s, power) / power;
            }

            double f = Factorial(m - 1);
            return sum / (f * f);
        }

        return Matrix<double>.Build.Dense(
            t.Length,
            t.Length,
            (i, j) => K(Math.Min(t[i], t[j]), Math.Abs(t[i] - t[j]))
        );
    }

    private static SmoothKind Kind(Matrix<double> blind, Matrix<double> covariance)
    {
        Matrix<double> c = blind * covariance * blind.Transpose();
        Evd<double> own = ((c + c.Transpose()) / 2).Evd(Symmetricity.Symmetric);
        Matrix<double> parts = own.EigenVectors.Transpose() * blind;
        return new(
            [.. own.EigenValues.Select(v => Math.Max(0, v.Real))],
            [.. parts.EnumerateRows().Select(r => r.ToImmutableArray())]
        );
    }

    /// <summary>Orthonormal rows that take nothing of a parabola.</summary>
    private static Matrix<double> NoParabola(double[] t)
    {
        int n = t.Length;
        Matrix<double> powers = Matrix<double>.Build.Dense(n, 3, (i, p) => Math.Pow(t[i] - 0.5, p));
        return powers.Svd().U.SubMatrix(0, n, 3, n - 3).Transpose();
    }

    private static double Choose(int n, int k) => Factorial(n) / (Factorial(k) * Factorial(n - k));

    private static double Factorial(int k) => k <= 1 ? 1 : k * Factorial(k - 1);
}
