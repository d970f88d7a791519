using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using PlankFit.Planking.Findings;

namespace PlankFit.Reading.Text;

/// <summary>Findings in the order of the file, as a reader meets them.</summary>
internal static partial class InOrder
{
    /// <summary>The findings of one file, those of the file as a whole first; the sort is stable.</summary>
    public static ImmutableArray<Finding> Of(IEnumerable<Finding> findings) =>
        [.. findings.OrderBy(f => Key(f, "line")).ThenBy(f => Key(f, "column"))];

    private static int Key(Finding finding, string word)
    {
        foreach (Match match in Numbered().Matches(finding.Where))
        {
            if (
                match.Groups[1].Value == word
                && int.TryParse(
                    match.Groups[2].Value,
                    NumberStyles.None,
                    CultureInfo.InvariantCulture,
                    out int number
                )
            )
            {
                return number;
            }
        }

        return 0;
    }

    [GeneratedRegex(", (line|column) ([0-9]{1,9})", RegexOptions.CultureInvariant)]
    private static partial Regex Numbered();
}
