using System.Globalization;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Fairness;

/// <summary>One known slip that may stand behind a value.</summary>
/// <param name="MeantMm">What the value would have been without it.</param>
/// <param name="How">What happened: "feet and inches exchanged".</param>
/// <param name="Weight">How likely it is among all slips, before the line is looked at.</param>
internal readonly record struct NamedSlip(double MeantMm, string How, double Weight);

/// <summary>
/// The slips of pen and eye that a value may have suffered, in the notation it is written in. The list and its weights are this project's own: half of all
/// errors are of no known kind, a quarter are figures that changed places, a fifth an amount misread, the rest a sign.
/// </summary>
internal static class NamedSlips
{
    public const double Unknown = 0.5;
    private const double Exchanged = 0.25;
    private const double Misread = 0.2;
    private const double Sign = 0.05;

    public static IEnumerable<NamedSlip> Of(double valueMm, LengthUnit unit, bool signed)
    {
        (double Mm, string How)[] swaps = [.. SwappedDigits.Of(valueMm, unit)];
        foreach ((double mm, string how) in swaps)
        {
            yield return new(mm, how, Exchanged / swaps.Length);
        }

        foreach (NamedSlip slip in OfAmount(valueMm, unit))
        {
            yield return slip;
        }

        if (signed && valueMm != 0)
        {
            yield return new(-valueMm, "wrong sign", Sign);
        }
    }

    /// <summary>Those that do not go by the figures, so that they hold for a distance from any mark.</summary>
    public static IEnumerable<NamedSlip> OfAmount(double valueMm, LengthUnit unit)
    {
        (double Mm, string Text)[] amounts = [.. Amounts(unit)];
        foreach ((double size, string text) in amounts)
        {
            string how = $"{text} misread";
            yield return new(valueMm + size, how, Misread / (2 * amounts.Length));
            yield return new(valueMm - size, how, Misread / (2 * amounts.Length));
        }
    }

    private static IEnumerable<(double SizeMm, string Text)> Amounts(LengthUnit unit)
    {
        if (LengthUnits.IsMetric(unit))
        {
            foreach (int mm in new[] { 5, 10, 20, 50, 100, 200, 500, 1000 })
            {
                yield return (mm, mm.ToString(CultureInfo.InvariantCulture) + " mm");
            }

            // A metric table may have been taken off a rule in inches.
            yield return (LengthUnits.MmPerInch, "1\"");
            yield return (LengthUnits.MmPerFoot, "a foot");
            yield break;
        }

        for (int eighths = 1; eighths <= 8; eighths++)
        {
            double inches = eighths / 8.0;
            yield return (inches * LengthUnits.MmPerInch, FractionText.Mixed(eighths, 8) + "\"");
        }

        yield return (LengthUnits.MmPerFoot, "a foot");
    }
}
