using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Fastenings;

/// <summary>
/// Planks that nothing holds: no fastening of theirs stands on any timber, nor pulls them down between. Forward most are such, where stringers run out and keel and
/// chine are not named as timber.
/// </summary>
internal static class BarePlanks
{
    public static IEnumerable<Finding> Of(
        string where,
        PlankLayerPlan layer,
        LayerFastenings rule,
        ImmutableDictionary<PlankId, PlankFastenings> all
    )
    {
        if (rule.Rule.Kind == FasteningKind.None)
        {
            yield break;
        }

        ImmutableArray<PlankId> bare =
        [
            .. layer
                .Starboard.Concat(layer.Port)
                .Where(p => all[p.Id].Points.All(f => f.Use == FasteningUse.Vent))
                .Select(p => p.Id),
        ];
        ImmutableArray<PlankId> starboard = [.. bare.Where(p => p.Side == Side.Starboard)];
        bool alike =
            2 * starboard.Length == bare.Length && starboard.All(p => bare.Contains(p.Twin));
        if (bare.IsEmpty)
        {
            yield break;
        }

        ImmutableArray<PlankId> told = alike ? starboard : bare;
        yield return new(
            Severity.Warning,
            where,
            $"no fastening holds {PlankRuns.Of(told)}{(alike ? "; to port likewise" : "")}: no timber that is named lies under {(told.Length == 1 ? "it" : "them")} with room for one. Name what they are fastened to under [[behind]] (a hog by from-keel, a chine log by from-chine), or hold them otherwise"
        )
        {
            Rank = Rank.SawAfter,
        };
    }
}
