using System.Globalization;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Fairness;

/// <summary>What a value might have been before two neighbouring figures changed places in the notation it is written in.</summary>
public static class SwappedDigits
{
    /// <summary>Each other value that one exchange gives, mm, and what was exchanged.</summary>
    public static IEnumerable<(double Mm, string How)> Of(double valueMm, LengthUnit unit) =>
        unit == LengthUnit.FeetInchesEighths ? OfFeet(valueMm) : OfNumber(valueMm, unit);

    private static IEnumerable<(double Mm, string How)> OfNumber(double valueMm, LengthUnit unit)
    {
        string text = NumberText.Trimmed(valueMm / LengthUnits.MmPer(unit), 4);
        int[] places = [.. Enumerable.Range(0, text.Length).Where(i => char.IsAsciiDigit(text[i]))];
        for (int i = 1; i < places.Length; i++)
        {
            char[] swapped = text.ToCharArray();
            (swapped[places[i - 1]], swapped[places[i]]) = (
                swapped[places[i]],
                swapped[places[i - 1]]
            );
            string other = new(swapped);
            if (other != text)
            {
                double number = double.Parse(other, CultureInfo.InvariantCulture);
                yield return (
                    number * LengthUnits.MmPer(unit),
                    $"figures {text[places[i - 1]]} and {text[places[i]]} exchanged"
                );
            }
        }
    }

    private static IEnumerable<(double Mm, string How)> OfFeet(double valueMm)
    {
        // Thirty-seconds are as fine as the notation goes; what is beyond whole eighths stays where it is.
        long size = (long)Math.Round(Math.Abs(valueMm) / LengthUnits.MmPerInch * 32);
        long rest = size % 4;
        long feet = size / 384;
        long inches = size / 32 % 12;
        long eighths = size / 4 % 8;
        double sign = valueMm < 0 ? -1 : 1;
        (long F, long I, long E, string How)[] swaps =
        [
            (feet, eighths, inches, "inches and eighths exchanged"),
            (inches, feet, eighths, "feet and inches exchanged"),
        ];
        foreach ((long f, long i, long e, string how) in swaps)
        {
            if (i < 12 && e < 8 && (f, i, e) != (feet, inches, eighths))
            {
                double mm = ((f * 384) + (i * 32) + (e * 4) + rest) * LengthUnits.MmPerInch / 32;
                yield return (sign * mm, how);
            }
        }
    }
}
