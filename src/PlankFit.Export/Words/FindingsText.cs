using System.Collections.Immutable;
using System.Text;
using PlankFit.Planking.Findings;

namespace PlankFit.Export.Words;

/// <summary>What was found, as lines of text for a terminal or a file.</summary>
public static class FindingsText
{
    /// <summary>So many are told at a terminal where a page has the rest.</summary>
    public const int ToldFirst = 7;

    /// <summary>By what they cost, of these causes first, then the gravest, otherwise in the order in which they were found.</summary>
    public static ImmutableArray<Finding> GravestFirst(IEnumerable<Finding> findings) =>
        [
            .. findings
                .OrderByDescending(f => f.Rank)
                .ThenByDescending(f => f.IsCause)
                .ThenByDescending(f => f.Severity),
        ];

    public static string Of(Rank rank) =>
        rank switch
        {
            Rank.DoNotSaw => "DO NOT SAW",
            Rank.BuyFirst => "BUY FIRST",
            Rank.SawAfter => "SAW ONLY AFTER",
            _ => "KNOW",
        };

    /// <summary>S1-03: what is wrong and what to do.</summary>
    public static string Words(Finding finding) =>
        (finding.Where.Length == 0 ? "" : finding.Where + ": ") + finding.Message;

    /// <summary>A head for each rank and under it what is of it, a line each; of more than so many the first, and a last line that counts the rest.</summary>
    /// <param name="rest">Where the rest stands.</param>
    public static IEnumerable<string> Ranked(
        IReadOnlyCollection<Finding> findings,
        int most = int.MaxValue,
        string rest = ""
    )
    {
        foreach (
            IGrouping<Rank, Finding> rank in GravestFirst(findings).Take(most).GroupBy(f => f.Rank)
        )
        {
            yield return Of(rank.Key);
            foreach (Finding finding in rank)
            {
                yield return "  " + Words(finding);
            }
        }

        Finding[] left = [.. GravestFirst(findings).Skip(most)];
        if (left.Length > 0)
        {
            yield return $"and {left.Length} more, in {rest}: {string.Join(", ", left.GroupBy(f => f.Rank).Select(g => $"{g.Count()} {Counted(g.Key)}"))}";
        }
    }

    private static string Counted(Rank rank) =>
        rank switch
        {
            Rank.DoNotSaw => "not to saw by",
            Rank.BuyFirst => "to buy for",
            Rank.SawAfter => "to see to before sawing",
            _ => "to know",
        };

    /// <summary>warning  S1-03: what is wrong and what to do.</summary>
    public static string Line(Finding finding) =>
        $"{PlankWords.Of(finding.Severity), -7}  {Words(finding)}";

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
