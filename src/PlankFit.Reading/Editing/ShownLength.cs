using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Lengths;

namespace PlankFit.Reading.Editing;

/// <summary>Lengths of a job's text shown, and typed, in other units than it is written in; the text keeps its own.</summary>
public static class ShownLength
{
    /// <summary>The least step of an arrow key: a millimetre, or an eighth of an inch.</summary>
    private static double StepMm(LengthUnit shown) =>
        LengthUnits.IsMetric(shown) ? 1 : LengthUnits.MmPerInch / 8;

    /// <summary>What a job that is written in one unit is shown in, where millimetres or feet and inches are asked for.</summary>
    public static LengthUnit Unit(LengthUnit written, bool metric, bool inchesAlone) =>
        LengthUnits.IsMetric(written) == metric
            ? (OutputSpec.Default with { InchesAlone = inchesAlone }).Shown(written)
        : metric ? LengthUnit.Millimetre
        : inchesAlone ? LengthUnit.Inch
        : LengthUnit.Foot;

    /// <summary>The same of a job, in the words of a page: mm, ft for feet and inches; else the job's own.</summary>
    public static LengthUnit Unit(Job job, string? units) =>
        units is "mm" or "ft"
            ? Unit(job.WrittenIn, units == "mm", job.Output.InchesAlone)
            : job.Units;

    /// <summary>The unit that a job's text says it is written in; null where it says none that there is.</summary>
    public static LengthUnit? Written(IEnumerable<JobField> fields) =>
        fields.FirstOrDefault(f => f.Address == "job.units")?.Written is { } name
            ? LengthUnits.Find(name)
            : null;

    /// <summary>A value as it is shown; null where it is no length, or none that can be read. A bare number is in the unit of the job, as its reader has it.</summary>
    public static string? Of(JobField field, LengthUnit written, LengthUnit shown) =>
        field is { Key: LengthKey, Written: { } text } && Mm(text, written, written) is { } mm
            ? LengthText.FormatExact(mm, shown)
            : null;

    /// <summary>
    /// What was typed where lengths are shown in that unit, as the text has it: in the unit that it is written in, exact to 0.001 mm. Where both are metric, or neither is, a field
    /// is shown as it is written, and what is typed in it is the text's own. What is no length is left as it is, for the reader to tell.
    /// </summary>
    /// <param name="by">So many steps more than that.</param>
    public static string Written(string typed, LengthUnit shown, LengthUnit written, int by = 0)
    {
        bool isItsOwn = LengthUnits.IsMetric(shown) == LengthUnits.IsMetric(written);
        if (
            (isItsOwn && by == 0)
            || Mm(
                typed.Trim(),
                isItsOwn ? written : shown,
                // Who sees feet and inches and types 6 means six inches.
                isItsOwn || shown != LengthUnit.Foot
                    ? isItsOwn
                        ? written
                        : shown
                    : LengthUnit.Inch
            )
                is not { } read
        )
        {
            return typed;
        }

        double mm = read + (by * StepMm(shown));
        return LengthUnits.IsMetric(written)
            ? NumberText.Trimmed(mm / LengthUnits.MmPer(written), 6)
            : NumberText.Trimmed(mm / LengthUnits.MmPerInch, 5) + " in";
    }

    /// <summary>The same for the value of a text at that address; what is no length stays as it was typed.</summary>
    /// <param name="shown">In which lengths are shown, mm or ft, and how many steps more than what was typed.</param>
    public static string Typed(
        string text,
        string address,
        string typed,
        (string Units, int By) shown
    )
    {
        ImmutableArray<JobField> fields = JobFields.Of(text);
        return
            fields.FirstOrDefault(f => f.Address == address) is { Key: LengthKey }
            && Written(fields) is { } written
            ? Written(typed, Unit(written, shown.Units == "mm", false), written, shown.By)
            : typed;
    }

    /// <summary>
    /// What was typed as a length that carries its own unit, and so is the same wherever it is read; null where it is none. A bare number is in the unit of the job where that is
    /// shown, and else in the one that is shown, six being inches where feet and inches are. A keyboard that has a comma for a point is understood.
    /// </summary>
    public static string? WithItsUnit(string typed, LengthUnit shown, LengthUnit written)
    {
        string text = typed.Trim();
        int comma = text.IndexOf(',', StringComparison.Ordinal);
        if (comma > 0 && text.Length - comma - 1 is 1 or 2)
        {
            // Three figures after it may be thousands.
            text = $"{text[..comma]}.{text[(comma + 1)..]}";
        }

        LengthUnit unit =
            LengthUnits.IsMetric(shown) == LengthUnits.IsMetric(written) ? written : shown;
        if (Mm(text, unit, Bare(shown, written)) is not { } mm)
        {
            return null;
        }

        return OfItsUnit(text) == mm ? text
            : LengthUnits.IsMetric(unit) ? NumberText.Trimmed(mm, 6) + " mm"
            : NumberText.Trimmed(mm / LengthUnits.MmPerInch, 5) + " in";
    }

    /// <summary>What a number by itself is in, where it is typed as a length that is to carry its own unit.</summary>
    public static LengthUnit Bare(LengthUnit shown, LengthUnit written) =>
        LengthUnits.IsMetric(shown) == LengthUnits.IsMetric(written) ? written
        : shown == LengthUnit.Foot ? LengthUnit.Inch
        : shown;

    /// <summary>A length that carries its own unit, mm; null where the text is none.</summary>
    public static double? OfItsUnit(string text) =>
        Mm(text, LengthUnit.Millimetre, LengthUnit.Millimetre) is { } a
        && Mm(text, LengthUnit.Inch, LengthUnit.Inch) is { } b
        && a == b
            ? a
            : null;

    /// <param name="bare">Of a number by itself.</param>
    private static double? Mm(string text, LengthUnit units, LengthUnit bare)
    {
        LengthReading read = decimal.TryParse(
            text,
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out decimal number
        )
            ? LengthNotation.OfNumber(number, bare)
            : LengthNotation.Read(text.Replace('\u2212', '-'), units);
        return read.Ok ? read.Mm : null;
    }
}
