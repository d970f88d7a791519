using System.Collections.Immutable;
using System.Text;
using PlankFit.Planking.Findings;

namespace PlankFit.Export.Words;

/// <summary>What was found, as lines of text for a terminal or a file.</summary>
public static class FindingsText
{
    /// <summary>The gravest first, otherwise in the order in which they were found.</summary>
    public static ImmutableArray<Finding> GravestFirst(IEnumerable<Finding> findings) =>
        [.. findings.OrderByDescending(f => f.Severity)];

    /// <summary>warning  S1-03: what is wrong and what to do.</summary>
    public static string Line(Finding finding) =>
        $"{PlankWords.Of(finding.Severity), -7}  {(finding.Where.Length == 0 ? "" : finding.Where + ": ")}{finding.Message}";

    /// <summary>All of them, one a line, and a last line that counts them; "nothing found" where there are none.</summary>
    public static string Listing(IReadOnlyCollection<Finding> findings)
    {
        StringBuilder text = new();
        foreach (Finding finding in GravestFirst(findings))
        {
            text.Append(Line(finding)).Append('\n');
        }

        return text.Append(Tally(findings)).Append('\n').ToString();
    }

    /// <summary>2 errors, 1 warning; nothing found.</summary>
    public static string Tally(IReadOnlyCollection<Finding> findings)
    {
        string[] parts =
        [
            .. new[] { Severity.Error, Severity.Warning, Severity.Note }
                .Select(s => (Severity: s, Count: findings.Count(f => f.Severity == s)))
                .Where(c => c.Count > 0)
                .Select(c => PlanWords.Count(c.Count, PlankWords.Of(c.Severity))),
        ];
        return parts.Length == 0 ? "nothing found" : string.Join(", ", parts);
    }
}
