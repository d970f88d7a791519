using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>One value of a row that its neighbours do not bear out.</summary>
/// <param name="Index">Which of the row's points.</param>
/// <param name="Residual">How far it stands beyond the value that the others foretell.</param>
/// <param name="Share">The part of the row's unfairness that would go with it, 0 to 1.</param>
/// <param name="Spread">Size of the error of the foretold value, for readings with errors of size 1.</param>
public readonly record struct Misreading(int Index, double Residual, double Share, double Spread);

/// <summary>
/// Finds wrong values in a row: the point whose correction alone explains most of the third-derivative energy, if it is not an end of the row and
/// stands out by the alarm or more; then again without it. An end always stands far out by any small error of the others, so it is never named; and
/// an error smaller than the alarm cannot be told from the reading of a rule.
/// </summary>
public static class Misreadings
{
    /// <summary>Third derivative: located 82 % of errors of 1/8 in where the wooden batten's second located 26 %, on 11 stations.</summary>
    public const int Order = 3;

    /// <summary>The alarm, mm: readings to a sixteenth of an inch are good to 0.8 mm, and the point and both neighbours err.</summary>
    public const double AlarmMm = 2.5;

    /// <summary>A row with fewer known points than this is not judged.</summary>
    public const int FewestPoints = 5;

    /// <summary>The misreadings in the order found, at most a quarter of the points; none where there are too few points.</summary>
    public static ImmutableArray<Misreading> Find(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double alarm
    )
    {
        List<int> left = [.. Enumerable.Range(0, x.Length)];
        ImmutableArray<Misreading>.Builder found = ImmutableArray.CreateBuilder<Misreading>();
        while (left.Count >= FewestPoints && found.Count < Math.Max(1, x.Length / 4))
        {
            double[] xs = new double[left.Count];
            double[] ys = new double[left.Count];
            for (int i = 0; i < left.Count; i++)
            {
                (xs[i], ys[i]) = (x[left[i]], y[left[i]]);
            }

            LeaveOneOut judged = LeaveOneOut.Of(xs, ys, Order);
            int worst = judged.Gains.IndexOf(judged.Gains.Max());
            double residual = judged.Residuals[worst];
            if (worst == 0 || worst == left.Count - 1 || Math.Abs(residual) < alarm)
            {
                break;
            }

            found.Add(
                new(
                    left[worst],
                    residual,
                    Math.Min(1, judged.Gains[worst] / judged.Energy),
                    judged.Spreads[worst]
                )
            );
            left.RemoveAt(worst);
        }

        return found.ToImmutable();
    }
}
