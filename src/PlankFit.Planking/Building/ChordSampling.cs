using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Building;

/// <summary>Choosing points along a curve so that no chord leaves it by more than a tolerance.</summary>
internal static class ChordSampling
{
    private const int MostIntervals = 16;

    /// <summary>Intervals are no shorter, mm: fifty times what the points are rounded to, so that an outline of a few hundredths stays simple when it is.</summary>
    private const double LeastMm = 2.5e-3;

    /// <summary>
    /// Rising parameters from <paramref name="from"/> to <paramref name="to"/>, both included. The sagitta of a chord falls with the square of its length. An
    /// interval goes by the greatest of those at its start, its middle and its end, since the bend may change within it; 0.75 of the tolerance is used, for what it
    /// does between these.
    /// </summary>
    public static double[] Parameters(
        Func<double, Vec3> curve,
        double from,
        double to,
        double chordMm
    )
    {
        double length = curve(from).ChordTo(curve(to));
        int halves = 2 * Math.Clamp((int)(length / LeastMm), 1, MostIntervals);
        double half = (to - from) / halves;
        var at = new Vec3[halves + 1];
        for (int i = 0; i <= halves; i++)
        {
            at[i] = curve(i == halves ? to : from + (i * half));
        }

        // Of the chord from half an interval before to half an interval after; at the ends the next one stands for it.
        double Sagitta(int i)
        {
            int k = Math.Clamp(i, 1, halves - 1);
            return (at[k] - (0.5 * (at[k - 1] + at[k + 1]))).Norm;
        }

        var parameters = new List<double>(256);
        for (int i = 0; i < halves; i += 2)
        {
            double sagitta = Math.Max(Sagitta(i), Math.Max(Sagitta(i + 1), Sagitta(i + 2)));
            int n = Math.Max(1, (int)Math.Ceiling(Math.Sqrt(sagitta / (0.75 * chordMm))));
            for (int k = 0; k < n; k++)
            {
                parameters.Add(from + (half * (i + (2.0 * k / n))));
            }
        }

        parameters.Add(to);
        return [.. parameters];
    }
}
