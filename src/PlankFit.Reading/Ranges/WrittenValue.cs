using System.Globalization;
using PlankFit.Planking.Units;
using PlankFit.Reading.Lengths;

namespace PlankFit.Reading.Ranges;

/// <summary>A figure as a person would write it into the job.</summary>
public static class WrittenValue
{
    /// <summary>Nearer than this it is the same length, mm: far below what any saw keeps.</summary>
    private const double SameMm = 1e-6;

    /// <param name="units">Of a length, as the job is written in; null for a plain number.</param>
    public static string Of(double figure, LengthUnit? units) =>
        units is not { } unit ? NumberText.Trimmed(figure, 6)
        : LengthUnits.IsMetric(unit) ? NumberText.Trimmed(figure / LengthUnits.MmPer(unit), 9)
        : Imperial(figure, unit);

    public static double? Number(string text) =>
        double.TryParse(
            text.Trim(),
            NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out double number
        ) && double.IsFinite(number)
            ? number
            : null;

    /// <summary>On the rule's marks as a rule has it, in the lofting table's notation where the job is written so; between them in decimals of an inch.</summary>
    private static string Imperial(double mm, LengthUnit unit)
    {
        string[] ways =
        [
            unit == LengthUnit.FeetInchesEighths
                ? LengthText.FeetInchesEighths(mm)
                : LengthText.ForPaper(mm, unit),
            $"{NumberText.Trimmed(mm / LengthUnits.MmPerInch, 9)} in",
        ];
        return ways.FirstOrDefault(
            w =>
                LengthNotation.Read(w, unit) is { Ok: true } read
                && Math.Abs(read.Mm - mm) < SameMm,
            $"{NumberText.Trimmed(mm, 9)} mm"
        );
    }
}
