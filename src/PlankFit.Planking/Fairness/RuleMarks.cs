using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;

namespace PlankFit.Planking.Fairness;

/// <summary>
/// Brings a faired row to the marks of a rule without roughening it more than need be: rounding each value by itself would put back a good part of
/// the unfairness, so each is set in turn on the mark that suits the others best, until none changes.
/// </summary>
internal static class RuleMarks
{
    private const int MostRounds = 50;

    /// <param name="r">The row's energy matrix.</param>
    /// <param name="old">The values as the table has them; one is kept where it is within half a step of where it should be.</param>
    /// <param name="faired">The values wanted, each within its bounds.</param>
    /// <returns>Values on marks or as they were, within the bounds; the old row where no better one was found.</returns>
    public static double[] Settle(
        Matrix<double> r,
        ImmutableArray<double> old,
        ImmutableArray<double> faired,
        double[] low,
        double[] high,
        double step
    )
    {
        double[] z = new double[old.Length];
        for (int i = 0; i < z.Length; i++)
        {
            z[i] = OnMark(faired[i], old[i], low[i], high[i], step);
        }

        bool changed = true;
        for (int round = 0; changed && round < MostRounds; round++)
        {
            changed = false;
            for (int i = 0; i < z.Length; i++)
            {
                double best = z[i] - (r.Row(i) * Vector<double>.Build.Dense(z) / r[i, i]);
                double mark = OnMark(best, old[i], low[i], high[i], step);
                if (Math.Abs(best - mark) < Math.Abs(best - z[i]) - (1e-6 * step))
                {
                    z[i] = mark;
                    changed = true;
                }
            }
        }

        return Energy(r, z) < Energy(r, [.. old]) ? z : [.. old];
    }

    private static double Energy(Matrix<double> r, double[] z)
    {
        // About the first value: R takes no account of a constant, and less is lost to rounding.
        Vector<double> v = Vector<double>.Build.Dense([.. z.Select(a => a - z[0])]);
        return v * (r * v);
    }

    private static double OnMark(double value, double old, double low, double high, double step)
    {
        value = Math.Clamp(value, low, high);
        if (Math.Abs(value - old) <= 0.5 * step)
        {
            return old;
        }

        double mark = Math.Round(value / step);
        mark =
            mark * step > high ? Math.Floor(high / step)
            : mark * step < low ? Math.Ceiling(low / step)
            : mark;
        return mark * step >= low && mark * step <= high ? mark * step : old;
    }
}
