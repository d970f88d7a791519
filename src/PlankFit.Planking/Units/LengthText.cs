namespace PlankFit.Planking.Units;

/// <summary>
/// How a length is written for people, in the job's units. On paper nothing is finer than half a millimetre or 1/32 in: what a rule shows and a
/// saw keeps. All that is written here is read back by the job's own length notation.
/// </summary>
public static class LengthText
{
    /// <summary>A length beyond a mark by less than this is on the mark when rounded up: it is the noise of computing, not wood, mm.</summary>
    private const double NoiseMm = 0.001;

    /// <summary>What thousandths of an inch do not tell, mm.</summary>
    private const double OnRuleMm = 0.013;

    /// <summary>Longer than any hull; beyond it a caller has mixed up its units, mm.</summary>
    private const double LongestMm = 1e9;

    /// <summary>
    /// The length with its unit, at the resolution of paper: <c>1835.5 mm</c>, <c>183.55 cm</c>, <c>1.8355 m</c>, <c>72 9/32 in</c>,
    /// <c>6'-0 9/32"</c>, <c>6-0-2 1/4</c>.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is NaN, infinite or longer than 1000 km.</exception>
    public static string ForPaper(double mm, LengthUnit unit, RoundTo mode = RoundTo.Nearest) =>
        LengthUnits.IsMetric(unit) || unit == LengthUnit.Inch
            ? PaperNumber(mm, unit, mode) + " " + LengthUnits.Name(unit)
            : PaperNumber(mm, unit, mode);

    /// <summary>The same without the unit, for a table whose head names it: <c>1835.5</c>, <c>72 9/32</c>; feet keep their marks.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is NaN, infinite or longer than 1000 km.</exception>
    public static string PaperNumber(double mm, LengthUnit unit, RoundTo mode = RoundTo.Nearest)
    {
        if (LengthUnits.IsMetric(unit))
        {
            double halves = Steps(mm, 0.5, mode);
            return NumberText.Trimmed(halves * 0.5 / LengthUnits.MmPer(unit), PaperDecimals(unit));
        }

        long thirtySeconds = (long)Steps(mm, LengthUnits.MmPerInch / 32, mode);
        string sign = thirtySeconds < 0 ? "-" : "";
        long size = Math.Abs(thirtySeconds);
        return unit switch
        {
            LengthUnit.Inch => sign + FractionText.Mixed(size, 32),
            LengthUnit.Foot => $"{sign}{size / 384}'-{FractionText.Mixed(size % 384, 32)}\"",
            _ => sign + FeetInchesEighths(size),
        };
    }

    /// <summary>The value that <see cref="ForPaper"/> writes, mm: for checks that ask what a bench would cut to.</summary>
    public static double OnPaperMm(double mm, LengthUnit unit, RoundTo mode = RoundTo.Nearest)
    {
        double step = PaperStepMm(unit);
        return Steps(mm, step, mode) * step;
    }

    /// <summary>Half a millimetre in metric units, 1/32 in otherwise, mm.</summary>
    public static double PaperStepMm(LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? 0.5 : LengthUnits.MmPerInch / 32;

    /// <summary>The sentence that states the tolerance on a sheet.</summary>
    public static string PaperToleranceText(LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? "Lengths to the nearest 0.5 mm; lengths to cut rounded up to the next 0.5 mm."
            : "Lengths to the nearest 1/32 in; lengths to cut rounded up to the next 1/32 in.";

    /// <summary>
    /// For lists and messages, to a tenth of a millimetre or a thousandth of an inch: <c>1835.7 mm</c>, <c>1.8357 m</c>, <c>72.272 in</c>,
    /// <c>6' 0.272"</c> in both kinds of feet.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is NaN, infinite or longer than 1000 km.</exception>
    public static string FormatExact(double mm, LengthUnit unit)
    {
        RequireLength(mm);
        if (LengthUnits.IsMetric(unit) || unit == LengthUnit.Inch)
        {
            int decimals = unit == LengthUnit.Inch ? 3 : PaperDecimals(unit);
            return NumberText.Trimmed(mm / LengthUnits.MmPer(unit), decimals)
                + " "
                + LengthUnits.Name(unit);
        }

        // Whole thousandths first, so that 11.9996 in carries into the foot.
        long thousandths = (long)
            Math.Round(mm / LengthUnits.MmPerInch * 1000, MidpointRounding.AwayFromZero);
        long size = Math.Abs(thousandths);
        string inches = NumberText.Trimmed(size % 12_000 / 1000.0, decimals: 3);
        return $"{(thousandths < 0 ? "-" : "")}{size / 12_000}' {inches}\"";
    }

    /// <summary>A thickness, to tell stock apart by: <c>9 mm</c>, <c>3/8 in</c> in feet too, and <c>0.354 in</c> where a rule does not have it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is NaN, infinite or longer than 1000 km.</exception>
    public static string Thickness(double mm, LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? FormatExact(mm, unit)
        : Math.Abs(OnPaperMm(mm, LengthUnit.Inch) - mm) < OnRuleMm ? ForPaper(mm, LengthUnit.Inch)
        : FormatExact(mm, LengthUnit.Inch);

    private static int PaperDecimals(LengthUnit unit) =>
        unit switch
        {
            LengthUnit.Centimetre => 2,
            LengthUnit.Metre => 4,
            _ => 1,
        };

    private static string FeetInchesEighths(long thirtySeconds)
    {
        long eighths = thirtySeconds / 4;
        string rest = (thirtySeconds % 4) switch
        {
            1 => " 1/4",
            2 => "+",
            3 => " 3/4",
            _ => "",
        };
        return $"{eighths / 96}-{eighths / 8 % 12}-{eighths % 8}{rest}";
    }

    private static double Steps(double mm, double stepMm, RoundTo mode)
    {
        RequireLength(mm);
        return mode == RoundTo.Up
            ? Math.Ceiling((mm - NoiseMm) / stepMm)
            : Math.Round(mm / stepMm, MidpointRounding.AwayFromZero);
    }

    private static void RequireLength(double mm)
    {
        if (!(Math.Abs(mm) <= LongestMm))
        {
            throw new ArgumentOutOfRangeException(
                nameof(mm),
                mm,
                "a length must be a number of millimetres up to 1e9"
            );
        }
    }
}
