using PlankFit.Planking.Units;

namespace PlankFit.Export.Lists;

/// <summary>Steps of a scale of small lengths that are easily said: 1, 2 and 5 times a power of ten in metric units, halved or doubled thirty-seconds in inches.</summary>
public static class ScaleSteps
{
    /// <summary>Nothing finer is told apart by eye or tape, mm.</summary>
    private const double LeastMm = 0.001;

    /// <summary>No rule shows less.</summary>
    private const double LeastInchMm = LengthUnits.MmPerInch / 32;

    private const double Noise = 1e-9;

    /// <summary>The least such step that is no less, mm.</summary>
    public static double Of(double leastMm, LengthUnit unit)
    {
        if (!LengthUnits.IsMetric(unit))
        {
            double inches = LeastInchMm;
            while (inches < leastMm * (1 - Noise))
            {
                inches *= 2;
            }

            return inches;
        }

        double least = Math.Max(leastMm, LeastMm),
            power = Math.Pow(10, Math.Floor(Math.Log10(least)));
        return new[] { 1, 2, 5, 10 }.Select(m => m * power).First(s => s >= least * (1 - Noise));
    }

    /// <summary>A length of the scale: millimetres with as many decimals as its steps have, since so small a length is told in nothing larger; or inches.</summary>
    public static string Text(double mm, double stepMm, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? NumberText.Padded(mm, Math.Max(0, (int)Math.Ceiling(-Math.Log10(stepMm) - Noise)))
                + " mm"
            : LengthText.ForPaper(mm, unit);
}
