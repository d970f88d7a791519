using System.Collections.Immutable;

namespace PlankFit.Planking.Fairness;

/// <summary>
/// What a loftsman checks a row by: how much the slope changes from one bay to the next, for any spacing of stations. One wrong value shows as a
/// dip between two peaks, or the reverse (J.C.P. Miller, Checking by Differences, 1950, from memory).
/// </summary>
public static class SecondDifferences
{
    /// <summary>At each inner point, 2 [(y+ - y)/h+ - (y - y-)/h-] / (h+ + h-), which tends to the second derivative; two fewer than points.</summary>
    public static ImmutableArray<double> Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        ImmutableArray<double>.Builder d = ImmutableArray.CreateBuilder<double>();
        for (int i = 1; i < x.Length - 1; i++)
        {
            double before = x[i] - x[i - 1];
            double after = x[i + 1] - x[i];
            d.Add(
                2 * (((y[i + 1] - y[i]) / after) - ((y[i] - y[i - 1]) / before)) / (before + after)
            );
        }

        return d.ToImmutable();
    }
}
