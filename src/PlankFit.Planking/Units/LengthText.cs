namespace PlankFit.Planking.Units;

/// <summary>
/// How a length is written for people, in the job's units. On paper nothing is finer than half a millimetre or 1/32 in: what a rule shows and a
/// saw keeps. All that is written here is read back by the job's own length notation.
/// </summary>
public static class LengthText
{
    /// <summary>A length beyond a mark by less than this is on the mark when rounded up: it is the noise of computing, not wood, mm.</summary>
    private const double NoiseMm = 0.001;

    /// <summary>Longer than any hull; beyond it a caller has mixed up its units, mm.</summary>
    private const double LongestMm = 1e9;

    /// <summary>
    /// The length with its unit, at the resolution of paper: <c>1835.5 mm</c>, <c>183.55 cm</c>, <c>1.8355 m</c>; in both kinds of feet <c>6'-0 9/32"</c>,
    /// <c>11 1/2"</c> where it is less than a foot, <c>0"</c>; in inches <c>72 9/32"</c>. A length below nought has a true minus sign in feet and inches, which
    /// nobody takes for the dash between the two.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is NaN, infinite or longer than 1000 km.</exception>
    public static string ForPaper(double mm, LengthUnit unit, RoundTo mode = RoundTo.Nearest) =>
        LengthUnits.IsMetric(unit)
            ? PaperNumber(mm, unit, mode) + " " + LengthUnits.Name(unit)
            : PaperNumber(mm, unit, mode);

    /// <summary>The same without the unit where it is metric, for a table whose head names it: <c>1835.5</c>; feet and inches keep their marks.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is NaN, infinite or longer than 1000 km.</exception>
    public static string PaperNumber(double mm, LengthUnit unit, RoundTo mode = RoundTo.Nearest)
    {
        if (LengthUnits.IsMetric(unit))
        {
            double halves = Steps(mm, 0.5, mode);
            return NumberText.Trimmed(halves * 0.5 / LengthUnits.MmPer(unit), PaperDecimals(unit));
        }

        return Marked((long)Steps(mm, LengthUnits.MmPerInch / 32, mode), unit);
    }

    /// <summary>To whole inches in feet and inches, for what is known no better: a radius, a run of stock to buy.</summary>
    public static string WholeInches(double mm, LengthUnit unit, RoundTo mode = RoundTo.Nearest) =>
        Marked(32 * (long)Steps(mm, LengthUnits.MmPerInch, mode), unit);

    /// <summary>Off a roll as one orders it, up to the next whole 10 mm or inch (common practice, no source): <c>44500 mm</c>, <c>44.5 m</c>, <c>146'-0"</c>.</summary>
    public static string ToOrder(double mm, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? ForPaper(ToOrderMm(mm, unit), unit)
            : WholeInches(ToOrderMm(mm, unit), unit);

    /// <summary>What <see cref="ToOrder"/> writes, mm.</summary>
    public static double ToOrderMm(double mm, LengthUnit unit)
    {
        double step = LengthUnits.IsMetric(unit) ? 10 : LengthUnits.MmPerInch;
        return step * Steps(mm, step, RoundTo.Up);
    }

    /// <summary>As a table of offsets has it, to 1/32 in: <c>6-0-2 1/4</c>, <c>6-0-2+</c>. For such tables alone: elsewhere it is read as inches.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is NaN, infinite or longer than 1000 km.</exception>
    public static string FeetInchesEighths(double mm)
    {
        long thirtySeconds = (long)Steps(mm, LengthUnits.MmPerInch / 32, RoundTo.Nearest);
        return (thirtySeconds < 0 ? "-" : "") + FeetInchesEighths(Math.Abs(thirtySeconds));
    }

    /// <summary>How feet-inches-eighths are read, for the sheet or the file that has them.</summary>
    public const string EighthsKey =
        "feet-inches-eighths: 4-11-2+ is 4 feet 11 inches and 2 eighths; + is a sixteenth more, 1/4 a quarter of an eighth";

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
            ? "Lengths to the nearest 0.5 mm; lengths to cut and least distances up to the next."
            : "Lengths to the nearest 1/32\"; lengths to cut and least distances up to the next.";

    /// <summary>For lists and messages, to a tenth of a millimetre: <c>1835.7 mm</c>, <c>1.8357 m</c>; in feet and inches as on paper, since no rule shows finer.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is NaN, infinite or longer than 1000 km.</exception>
    public static string FormatExact(double mm, LengthUnit unit)
    {
        RequireLength(mm);
        return LengthUnits.IsMetric(unit)
            ? NumberText.Trimmed(mm / LengthUnits.MmPer(unit), PaperDecimals(unit))
                + " "
                + LengthUnits.Name(unit)
            : ForPaper(mm, unit);
    }

    /// <summary>What is judged by less than paper shows: the same, but what is there and under half a mark is not called nought: <c>under 0.1 mm</c>, <c>under 1/32"</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is NaN, infinite or longer than 1000 km.</exception>
    public static string Fine(double mm, LengthUnit unit)
    {
        string exact = FormatExact(mm, unit);
        return Math.Abs(mm) <= NoiseMm || exact != FormatExact(0, unit) ? exact
            : LengthUnits.IsMetric(unit)
                ? $"under {FormatExact(Math.Pow(0.1, PaperDecimals(unit)) * LengthUnits.MmPer(unit), unit)}"
            : "under 1/32\"";
    }

    /// <summary>As a bound in words: <c>at most 0.3 mm</c>, <c>under 1/32"</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is NaN, infinite or longer than 1000 km.</exception>
    public static string FineMost(double mm, LengthUnit unit) => Bound(Fine(mm, unit));

    /// <summary>A length as <see cref="Fine"/> has it as a bound: one that is told as under something already is one.</summary>
    public static string Bound(string fine) =>
        fine.StartsWith("under", StringComparison.Ordinal) ? fine : $"at most {fine}";

    /// <summary>Of a film or a cloth, which no rule measures: <c>0.94 mm</c>, <c>37 thousandths of an inch</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is NaN, infinite or longer than 1000 km.</exception>
    public static string Thin(double mm, LengthUnit unit)
    {
        RequireLength(mm);
        return LengthUnits.IsMetric(unit)
            ? NumberText.Trimmed(mm, 2) + " mm"
            : NumberText.Trimmed(1000 / LengthUnits.MmPerInch * mm, 0) + " thousandths of an inch";
    }

    /// <summary>So far from a place, or at it where that is nothing on paper: <c>800 mm from its inboard end</c>, <c>at its inboard end</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is NaN, infinite or longer than 1000 km.</exception>
    public static string From(double mm, LengthUnit unit, string place) =>
        ForPaper(mm, unit) is var far && far == ForPaper(0, unit)
            ? "at " + place
            : $"{far} from {place}";

    /// <summary>
    /// A bound that nothing may pass, and so never more than was meant: down to a tenth of a millimetre, <c>0.5 mm</c>; in feet and inches down to the 1/32 in, or, where that leaves nothing or takes off
    /// more than a quarter, to the 1/64 in that is the finest of a steel rule: <c>1/64"</c>.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is NaN, infinite or longer than 1000 km.</exception>
    public static string AtMost(double mm, LengthUnit unit)
    {
        RequireLength(mm);
        if (LengthUnits.IsMetric(unit))
        {
            return FormatExact(Math.Floor((mm + NoiseMm) * 10) / 10, unit);
        }

        const double step = LengthUnits.MmPerInch / 64;
        long sixtyFourths = (long)Math.Floor((mm + NoiseMm) / step),
            even = sixtyFourths - (sixtyFourths % 2);
        return even * step >= 0.75 * mm
            ? Marked(even / 2, unit)
            : FractionText.Mixed(sixtyFourths, 64) + "\"";
    }

    /// <summary>What an open seam may be, never told as more: down to what paper shows, and where that leaves nothing as a film in millimetres, and as under the least mark in inches.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is NaN, infinite or longer than 1000 km.</exception>
    public static string Gap(double mm, LengthUnit unit) =>
        ForPaper(mm, unit, RoundTo.Down) is var most
        && (!(mm > NoiseMm) || most != ForPaper(0, unit))
            ? most
        : LengthUnits.IsMetric(unit) ? Thin(mm, unit)
        : $"under {ForPaper(mm, unit, RoundTo.Up)}";

    /// <summary>
    /// What must be left, and so never less than was meant: up to the next half millimetre; in feet and inches to the next 1/64 in, which is as fine as what may be
    /// taken off: <c>3/8"</c> less <c>1/64"</c> is <c>23/64"</c>.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is NaN, infinite or longer than 1000 km.</exception>
    public static string AtLeast(double mm, LengthUnit unit)
    {
        if (LengthUnits.IsMetric(unit))
        {
            return ForPaper(mm, unit, RoundTo.Up);
        }

        RequireLength(mm);
        const double step = LengthUnits.MmPerInch / 64;
        long sixtyFourths = (long)Math.Ceiling((mm - NoiseMm) / step);
        return sixtyFourths % 2 == 0
            ? Marked(sixtyFourths / 2, unit)
            : FractionText.Mixed(sixtyFourths, 64) + "\"";
    }

    /// <summary>Of whole 32nds of an inch.</summary>
    private static string Marked(long thirtySeconds, LengthUnit unit)
    {
        long size = Math.Abs(thirtySeconds),
            part = size % 32;
        string sign = thirtySeconds < 0 ? "\u2212" : "";
        if (unit == LengthUnit.Inch || size < 384)
        {
            return $"{sign}{FractionText.Mixed(size, 32)}\"";
        }

        // The inches stand there even where there are none: 7'-13/16" is read as thirteen.
        string fraction = part == 0 ? "" : " " + FractionText.Mixed(part, 32);
        return $"{sign}{size / 384}'-{size % 384 / 32}{fraction}\"";
    }

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
        return mode switch
        {
            RoundTo.Up => Math.Ceiling((mm - NoiseMm) / stepMm),
            RoundTo.Down => Math.Floor((mm + NoiseMm) / stepMm),
            _ => Math.Round(mm / stepMm, MidpointRounding.AwayFromZero),
        };
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
