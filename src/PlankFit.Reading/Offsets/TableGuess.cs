using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;

namespace PlankFit.Reading.Offsets;

/// <summary>What a table tells of itself before anybody has said anything of it: proposals, to be looked at by whoever brought it.</summary>
/// <param name="Lines">Named in its first column, each once, in its order.</param>
/// <param name="Units">"ft-in-8" where a value is written so, "mm" where one is larger than any other unit would make it; null where it may be several.</param>
/// <param name="Keel">The one line of such a name; null where there is none or are several.</param>
public sealed partial record TableGuess(
    ImmutableArray<string> Lines,
    string? Units,
    string? Keel,
    string? Chine
)
{
    /// <summary>Of no boat planked in wood is anything so far from anything else, but in mm: 60 m are 2400 inches.</summary>
    private const double SurelyMm = 2500;

    public static TableGuess Of(TableCells table)
    {
        ImmutableArray<string>[] rows =
        [
            .. table.Words.Skip(table.Head + 1).Where(r => r.Length > 2 && table.Head >= 0),
        ];
        ImmutableArray<string> lines =
        [
            .. rows.Select(r => r[0].Trim()).Where(n => n.Length > 0).Distinct(),
        ];
        string[] values = [.. rows.SelectMany(r => r.Skip(2)).Where(v => v.Length > 0)];
        return new(
            lines,
            values.Any(v => FeetInchesEighths().IsMatch(v)) ? "ft-in-8"
                : values.Any(v => Math.Abs(Number(v)) > SurelyMm) ? "mm"
                : null,
            One(lines, "keel") ?? One(lines, "rabbet"),
            One(lines, "chine")
        );
    }

    private static string? One(ImmutableArray<string> lines, string word)
    {
        string[] named =
        [
            .. lines.Where(l => l.Contains(word, StringComparison.OrdinalIgnoreCase)),
        ];
        return named.Length == 1
            ? named[0]
            : named.FirstOrDefault(l => l.Equals(word, StringComparison.OrdinalIgnoreCase));
    }

    private static double Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number)
        && double.IsFinite(number)
            ? number
            : 0;

    [GeneratedRegex(@"^-?\d{1,4}-\d{1,2}-\d[+-]?$", RegexOptions.CultureInvariant)]
    private static partial Regex FeetInchesEighths();
}
