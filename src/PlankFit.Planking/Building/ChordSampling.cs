using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>Choosing points along a curve so that no chord leaves it by more than a tolerance.</summary>
internal static class ChordSampling
{
    private const int Intervals = 16;

    /// <summary>Rising parameters from <paramref name="from"/> to <paramref name="to"/>, both included. The sagitta of a chord falls with the square of its length; 0.75 of the tolerance is used, for the change of curvature within an interval.</summary>
    public static double[] Parameters(
        Func<double, Vec3> curve,
        double from,
        double to,
        double chordMm
    )
    {
        var parameters = new List<double>(256);
        double h = (to - from) / Intervals;
        Vec3 a = curve(from);
        for (int i = 0; i < Intervals; i++)
        {
            double start = from + (i * h);
            Vec3 middle = curve(start + (h / 2)),
                b = curve(start + h);
            double sagitta = (middle - (0.5 * (a + b))).Norm;
            int n = Math.Max(1, (int)Math.Ceiling(Math.Sqrt(sagitta / (0.75 * chordMm))));
            for (int k = 0; k < n; k++)
            {
                parameters.Add(start + (h * k / n));
            }

            a = b;
        }

        parameters.Add(to);
        return [.. parameters];
    }
}
