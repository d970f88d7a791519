using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Planking.Units;

namespace PlankFit.Reading.Lengths;

/// <summary>
/// Lengths as a builder writes them. A bare number is in the job's units; a text may carry its own: 9 mm, 1.2 m, 3/8 in, 2 1/2 in,
/// 5'-4 3/4", 5' 4.75", or the lofting table's feet-inches-eighths 5-4-6, with + or - for plus or minus one sixteenth, or with half or quarters
/// of an eighth: 5-4-6 1/2. A minus in front takes the whole: -0-3-4 is three and a half inches below the base. All sums are exact; the result is the
/// double nearest to the exact number of millimetres.
/// </summary>
public static class LengthNotation
{
    /// <summary>Beyond a kilometre it is not a length of a boat, mm.</summary>
    private const decimal LongestMm = 1_000_000;

    private const int LongestText = 60;

    /// <summary>A text from the job file.</summary>
    public static LengthReading Read(string text, LengthUnit units) =>
        Read(text, units, eighthsOnly: false);

    /// <summary>A cell of the table of offsets; where the job is in ft-in-8 nothing but that notation (and 0) stands there.</summary>
    public static LengthReading ReadCell(string text, LengthUnit units) =>
        Read(text, units, units == LengthUnit.FeetInchesEighths);

    /// <summary>A bare number in the job's units, as TOML gives it.</summary>
    public static LengthReading OfNumber(decimal number, LengthUnit units)
    {
        if (units == LengthUnit.FeetInchesEighths && number != 0)
        {
            return LengthReading.Wrong(LengthFaults.BareInEighths(text: null));
        }

        return Math.Abs(number) > LongestMm
            ? LengthReading.Wrong(LengthFaults.TooLong)
            : Result(number * (decimal)LengthUnits.MmPer(units));
    }

    /// <summary>What is accepted in the job file, for the end of a message.</summary>
    public static string Accepted(LengthUnit units) =>
        units == LengthUnit.FeetInchesEighths
            ? "accepted: feet-inches-eighths in quotes, such as \"5-4-6\", \"5-4-6+\" or \"5-4-6 1/4\", or a length with its unit such as \"9 mm\" or \"3/8 in\""
            : $"accepted: a number of {LengthUnits.Name(units)}, or a length with its own unit in quotes: \"9 mm\", \"1.2 m\", \"3/8 in\", \"2 1/2 in\", \"5-4-6+\"";

    /// <summary>What is accepted in a cell of the table.</summary>
    public static string AcceptedInCell(LengthUnit units) =>
        units == LengthUnit.FeetInchesEighths
            ? "accepted: feet-inches-eighths such as 5-4-6, 5-4-6+ or 5-4-6 1/4, or an empty cell where the table has no value"
            : $"accepted: a number of {LengthUnits.Name(units)}, a length with its own unit such as 3/8 in, 5'-4 3/4\" or 5-4-6+, or an empty cell where the table has no value";

    /// <summary>What is accepted in a list beside the table: the stock, what was measured.</summary>
    public static string AcceptedInList(LengthUnit units) =>
        units == LengthUnit.FeetInchesEighths
            ? "accepted: feet-inches-eighths such as 5-4-6, or a length with its own unit such as 5 1/2 in or 5'-4 3/4\""
            : $"accepted: a number of {LengthUnits.Name(units)}, or a length with its own unit such as 3/8 in, 5'-4 3/4\" or 5-4-6+";

    private static LengthReading Read(string text, LengthUnit units, bool eighthsOnly)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return LengthReading.Wrong("is empty");
        }

        if (text.Length > LongestText)
        {
            return LengthReading.Wrong("is too long for a length");
        }

        ImmutableArray<LengthToken> tokens = LengthScanner.Scan(text);
        bool negative = tokens[0].Kind == TokenKind.Dash;
        ReadOnlySpan<LengthToken> rest = tokens.AsSpan()[(negative ? 1 : 0)..];
        string word = Word(rest);
        LengthParts parts = LengthGrammar.Read(word, rest, units, eighthsOnly);
        if (parts.Fault is { } fault)
        {
            return LengthReading.Wrong(fault);
        }

        return Result(negative ? -parts.Mm : parts.Mm);
    }

    private static string Word(ReadOnlySpan<LengthToken> tokens)
    {
        Span<char> kinds = stackalloc char[LongestText];
        for (int i = 0; i < tokens.Length; i++)
        {
            kinds[i] = tokens[i].Kind;
        }

        return new string(kinds[..tokens.Length]);
    }

    private static LengthReading Result(decimal mm)
    {
        if (Math.Abs(mm) > LongestMm)
        {
            return LengthReading.Wrong(LengthFaults.TooLong);
        }

        // Through text, since that is the conversion that promises the nearest double; and no minus nought.
        return LengthReading.Of(
            mm == 0
                ? 0
                : double.Parse(
                    mm.ToString(CultureInfo.InvariantCulture),
                    CultureInfo.InvariantCulture
                )
        );
    }
}
