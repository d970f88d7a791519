using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;

namespace PlankFit.Planking.Fairness;

/// <summary>
/// The fairest row within a tolerance: the values z, each between its own two bounds, for which the energy z'Rz is least. A convex quadratic programme
/// with bounds, solved exactly by following the set of bounds that hold (Nocedal and Wright, Numerical Optimization, algorithm 16.3, from memory;
/// held against another program's solver by a test).
/// </summary>
public static class Batten
{
    /// <summary>Where many rows are equally fair (any parabola, at order 3) the one nearest the table is taken: its weight against R's largest entry.</summary>
    private const double NearnessWeight = 1e-10;

    /// <summary>The row's values, faired.</summary>
    /// <param name="x">Strictly increasing, more than m.</param>
    /// <param name="y">The values as they stand; each within its bounds.</param>
    /// <param name="low">The least that each may become.</param>
    /// <param name="high">The most that each may become; equal to low where a value is held.</param>
    /// <param name="m">Order of the derivative: 2 a wooden batten, 3 even change of curvature.</param>
    /// <exception cref="ArgumentException">A value lies outside its bounds, or the x do not increase.</exception>
    public static ImmutableArray<double> Fair(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> low,
        ReadOnlySpan<double> high,
        int m
    )
    {
        int n = y.Length;
        for (int i = 0; i < n; i++)
        {
            if (!(low[i] <= y[i] && y[i] <= high[i]))
            {
                throw new ArgumentException(
                    $"value {i} lies outside its bounds: {low[i]} <= {y[i]} <= {high[i]}"
                );
            }
        }

        Matrix<double> r = EnergyMatrix.OnUnitSpan(x, m);
        double nearness = NearnessWeight * r.Diagonal().AbsoluteMaximum();
        Matrix<double> h = r + (nearness * Matrix<double>.Build.DenseIdentity(n));
        Vector<double> y0 = Vector<double>.Build.Dense(y.ToArray());
        double[] from = new double[n];
        double[] to = new double[n];
        for (int i = 0; i < n; i++)
        {
            (from[i], to[i]) = (low[i] - y[i], high[i] - y[i]);
        }

        // Moves d = z - y: least d'Hd/2 + (Ry)'d, H = R and a little of d'd.
        double[] d = BoundedQuadratic.Least(h, r * y0, from, to);
        ImmutableArray<double>.Builder z = ImmutableArray.CreateBuilder<double>(n);
        for (int i = 0; i < n; i++)
        {
            z.Add(Math.Clamp(y[i] + d[i], low[i], high[i]));
        }

        return z.MoveToImmutable();
    }
}
