using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Sheets;

/// <summary>A chart's box and what its edges stand for; its levels lie on whole steps.</summary>
internal readonly record struct ChartAxis(
    Box Box,
    double From,
    double To,
    double Low,
    double High,
    double Step
)
{
    private static readonly double[] Metric = [0.5, 1, 2, 5, 10, 20, 50, 100];
    private static readonly double[] Inches = [1 / 16.0, 1 / 8.0, 1 / 4.0, 1 / 2.0, 1, 2, 4];

    public double X(double x) => Box.Left + ((x - From) / (To - From) * Box.Width);

    public double Y(double y) => Box.Bottom + ((y - Low) / (High - Low) * Box.Height);

    public Vec2 At(double x, double y) => new(X(x), Y(y));

    public IEnumerable<double> Levels()
    {
        int first = (int)Math.Round(Low / Step),
            last = (int)Math.Round(High / Step);
        for (int i = first; i <= last; i++)
        {
            yield return i * Step;
        }
    }

    /// <summary>Lengths, in steps of the job's rule.</summary>
    public static ChartAxis OfLengths(
        Box box,
        double from,
        double to,
        double least,
        double most,
        LengthUnit unit
    ) =>
        Of(
            box,
            (from, to),
            least,
            most,
            LengthUnits.IsMetric(unit) ? Metric : [.. Inches.Select(i => i * 25.4)]
        );

    public static ChartAxis OfDegrees(Box box, double from, double to, double least, double most) =>
        Of(box, (from, to), least, most, [1, 2, 5, 10, 15, 30]);

    private static ChartAxis Of(
        Box box,
        (double From, double To) along,
        double least,
        double most,
        IReadOnlyList<double> steps
    )
    {
        const int levels = 8;
        double step = steps.FirstOrDefault(s => (most - least) / s <= levels - 1, steps[^1]);
        double low = Math.Floor(least / step) * step,
            high = Math.Ceiling(most / step) * step;
        return new(box, along.From, along.To, low, high > low ? high : low + step, step);
    }
}
