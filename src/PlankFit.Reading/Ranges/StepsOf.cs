using PlankFit.Planking.Units;

namespace PlankFit.Reading.Ranges;

/// <summary>Values from one figure to another, in whole steps from the first; the last is among them whatever the step.</summary>
internal static class StepsOf
{
    /// <summary>Where no step is said there are no more than so many.</summary>
    private const int MostUsual = 10;

    /// <summary>A part of a step by which doubles may miss the last value.</summary>
    private const double Rounding = 1e-6;

    private static readonly double[] Metric = [1, 2, 5, 10, 20, 25, 50, 100, 200, 250, 500, 1000];
    private static readonly double[] Inches =
    [
        .. new[] { 1 / 8.0, 1 / 4.0, 1 / 2.0, 1, 2, 3, 6, 12, 24, 36 }.Select(i =>
            i * LengthUnits.MmPerInch
        ),
    ];
    private static readonly double[] Degrees = [0.5, 1, 2, 5, 10, 15, 30];

    /// <summary>A step as somebody would choose it, in the job's kind of rule.</summary>
    /// <param name="units">Null for degrees.</param>
    public static double Usual(double from, double to, LengthUnit? units) =>
        (
            units is not { } u ? Degrees
            : LengthUnits.IsMetric(u) ? Metric
            : Inches
        ).FirstOrDefault(s => (to - from) / s <= MostUsual + Rounding, (to - from) / MostUsual);

    /// <summary>How many values there are.</summary>
    public static double Count(double from, double to, double step) =>
        Math.Ceiling(((to - from) / step) - Rounding) + 1;

    public static IEnumerable<double> Values(double from, double to, double step)
    {
        int count = (int)Count(from, to, step);
        for (int i = 0; i < count; i++)
        {
            yield return i == count - 1 ? to : from + (i * step);
        }
    }
}
