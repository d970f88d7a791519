using MathNet.Numerics.LinearAlgebra;

namespace PlankFit.Planking.Fairness;

/// <summary>
/// How hard a batten has to work to pass through points. R is such that z'Rz is the least integral of the square of the m-th derivative of any curve
/// through (x, z): m = 2 is the wooden batten, m = 3 a curve whose curvature changes as evenly as can be. R is the upper left block of the inverse of
/// [[Phi, P], [P', 0]] with Phi_ij = (-1)^m |xi - xj|^(2m-1) / (2 (2m-1)!) and P the powers of x below m (natural splines of degree 2m - 1;
/// Green and Silverman, Nonparametric Regression and Generalized Linear Models, ch. 2, from memory; held by tests against closed forms).
/// </summary>
public static class EnergyMatrix
{
    /// <summary>R for stations at x, in units of z² per (unit of x)^(2m-1).</summary>
    /// <param name="x">Strictly increasing, more than m of them.</param>
    /// <param name="m">Order of the derivative, 1 to 4.</param>
    /// <exception cref="ArgumentException">The x do not increase, or there are too few.</exception>
    public static Matrix<double> Of(ReadOnlySpan<double> x, int m)
    {
        double span = x.Length > 0 ? x[^1] - x[0] : 0;
        return OnUnitSpan(x, m) / Math.Pow(span, (2 * m) - 1);
    }

    /// <summary>The same with x first brought to 0..1, so that its entries are neither huge nor tiny.</summary>
    /// <exception cref="ArgumentException">The x do not increase, or there are too few.</exception>
    public static Matrix<double> OnUnitSpan(ReadOnlySpan<double> x, int m)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(m, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(m, 4);
        Require(x, m);
        int n = x.Length;
        double span = x[^1] - x[0];
        double sign = m % 2 == 0 ? 1 : -1;
        double scale = sign / (2 * Factorial((2 * m) - 1));
        Matrix<double> system = Matrix<double>.Build.Dense(n + m, n + m);
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                system[i, j] = scale * Math.Pow(Math.Abs(x[i] - x[j]) / span, (2 * m) - 1);
            }

            // Powers about the middle: the same space of polynomials, better conditioned.
            double t = ((x[i] - x[0]) / span) - 0.5;
            for (int p = 0; p < m; p++)
            {
                system[i, n + p] = system[n + p, i] = Math.Pow(t, p);
            }
        }

        Matrix<double> r = system.Inverse().SubMatrix(0, n, 0, n);
        return (r + r.Transpose()) / 2;
    }

    private static void Require(ReadOnlySpan<double> x, int m)
    {
        if (x.Length <= m)
        {
            throw new ArgumentException(
                $"{x.Length} points; a batten of order {m} needs at least {m + 1}",
                nameof(x)
            );
        }

        for (int i = 1; i < x.Length; i++)
        {
            if (!(x[i] > x[i - 1]))
            {
                throw new ArgumentException($"x[{i}] does not lie beyond x[{i - 1}]", nameof(x));
            }
        }
    }

    private static double Factorial(int k) => k <= 1 ? 1 : k * Factorial(k - 1);
}
