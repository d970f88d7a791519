using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Fastenings;

/// <summary>What a person should know of timbers along which the spacing cannot be kept: a finding a timber, the widest gap with its place and its cause first.</summary>
internal static class RunFindings
{
    private const int MostNamed = 8;

    public static IEnumerable<Finding> Of(
        string where,
        FasteningRule rule,
        ImmutableArray<TimberGap> gaps,
        LengthUnit unit
    )
    {
        foreach (IGrouping<string, TimberGap> timber in gaps.GroupBy(g => g.Backing))
        {
            // One of each pair of mirror images stands for both.
            TimberGap[] pairs =
                [.. timber.Where(g => g.Side == Side.Starboard && timber.Any(t => t.IsTwinOf(g)))],
                widest =

                [
                    .. timber
                        .Where(g => pairs.Contains(g) || !pairs.Any(p => p.IsTwinOf(g)))
                        .OrderByDescending(g => g.GapMm),
                ];
            bool alike = pairs.Length == widest.Length;
            string Place(TimberGap gap) =>
                RunFindings.Place(gap) + (!alike && pairs.Contains(gap) ? ", and to port," : "");
            TimberGap worst = widest[0];
            string others = string.Join(
                ", ",
                widest.Skip(1).Take(MostNamed).Select(g => $"{Place(g)} {Mm(g.GapMm)}")
            );
            // Beyond twice the spacing a fastening is missing altogether: our own bound, no source.
            bool bare = worst.GapMm > 2 * rule.SpacingMm;
            yield return new(
                bare ? Severity.Warning : Severity.Note,
                where,
                $"along {timber.Key} fastenings are further apart than the {Mm(rule.SpacingMm)} of the rule in {NumberText.Count(alike ? widest.Length : timber.Count(), "place")}: at most {Mm(worst.GapMm)}, {Place(worst)} "
                    + $"(the best place there is {Mm(worst.Hindered.HasMm)} from {worst.Hindered.By}, {Mm(worst.Hindered.AsksMm)} asked)"
                    + (
                        bare
                            ? "; nothing holds the planks there as it is: ask less of what stands in the way, or give them a wider timber, before they are sawn"
                            : ""
                    )
                    + (others.Length > 0 ? $"; then {others}" : "")
                    + (widest.Length > MostNamed + 1 ? " and others" : "")
                    + (alike ? "; to port likewise" : "")
            )
            {
                Rank = bare ? Rank.SawAfter : Rank.Know,
            };
        }

        string Mm(double mm) => FasteningFindings.Small(mm, unit);
    }

    private static string Place(TimberGap gap) =>
        (gap.From, gap.To) switch
        {
            ({ } a, { } b) when a == b => $"in {a}",
            ({ } a, { } b) => $"from {a} to {b}",
            ({ } a, null) => $"from {a} to its end",
            (null, { } b) => $"from its end to {b}",
            _ => "from end to end",
        };
}
