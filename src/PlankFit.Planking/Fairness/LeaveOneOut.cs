using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;

namespace PlankFit.Planking.Fairness;

/// <summary>
/// Each point of a row judged by all the others: how far it stands from where the fairest curve through the rest would pass, and how much of the
/// row's unfairness would go if it alone were put there. In closed form, no curve is fitted again: with g = R y, the residual is g_k / R_kk and the
/// energy explained g_k² / R_kk (minimise y'Ry over y_k alone).
/// </summary>
/// <param name="Residuals">y_k less the value that the others foretell.</param>
/// <param name="Gains">Energy that would go, never negative.</param>
/// <param name="Energy">y'Ry of the row as it stands.</param>
/// <param name="Spreads">Size of the error of each residual when every point is read with an error of size 1, each on its own.</param>
public sealed record LeaveOneOut(
    ImmutableArray<double> Residuals,
    ImmutableArray<double> Gains,
    double Energy,
    ImmutableArray<double> Spreads
)
{
    /// <param name="x">Strictly increasing, more than m.</param>
    /// <param name="y">As many.</param>
    /// <param name="m">Order of the derivative: 3 finds misreadings that 2 passes by.</param>
    public static LeaveOneOut Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y, int m)
    {
        Matrix<double> r = EnergyMatrix.OnUnitSpan(x, m);

        // The energy of a straight line is nothing, so the row is judged about its chord: less is lost to rounding.
        double[] off = new double[y.Length];
        for (int i = 0; i < off.Length; i++)
        {
            double t = (x[i] - x[0]) / (x[^1] - x[0]);
            off[i] = m > 1 ? y[i] - ((1 - t) * y[0]) - (t * y[^1]) : y[i] - y[0];
        }

        Vector<double> v = Vector<double>.Build.Dense(off);
        Vector<double> g = r * v;
        return new(
            [.. g.Select((gk, k) => gk / r[k, k])],
            [.. g.Select((gk, k) => gk * gk / r[k, k])],
            Math.Max(0, v * g),
            [.. Enumerable.Range(0, off.Length).Select(k => r.Row(k).L2Norm() / r[k, k])]
        );
    }
}
