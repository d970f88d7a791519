using PlankFit.Planking.Units;

namespace PlankFit.Export.Comparing;

/// <summary>The scale of a figure on a chart, in whole steps of one, two or five.</summary>
internal readonly record struct FigureScale(double From, double To, double Step)
{
    private const int MostSteps = 8;

    /// <summary>Holds all values, with a little room; what does not show in lists is not made much of, and a count has no parts.</summary>
    public static FigureScale Of(double[] values, Measure of, LengthUnit unit)
    {
        double least = values.Min(),
            most = values.Max(),
            shows = of.Step / of.OnAxis(unit).Worth,
            span = Math.Max(most - least, 4 * shows),
            ten = Math.Pow(10, Math.Floor(Math.Log10(span / MostSteps))),
            step = Math.Max(
                of.Step == 1 ? 1 : 0,
                new[] { 1, 2, 5, 10 }.Select(s => s * ten).First(s => span / s <= MostSteps)
            );
        return new(
            Math.Max(0, Math.Floor((least / step) - 0.25) * step),
            Math.Ceiling((Math.Max(most, least + span) / step) + 0.25) * step,
            step
        );
    }

    /// <summary>How far along the scale a value lies, from nought to one.</summary>
    public double Part(double value) => (value - From) / (To - From);

    public IEnumerable<double> Levels()
    {
        int count = (int)Math.Round((To - From) / Step);
        for (int i = 0; i <= count; i++)
        {
            yield return From + (i * Step);
        }
    }
}
