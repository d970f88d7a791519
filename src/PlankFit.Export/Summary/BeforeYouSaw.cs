using System.Collections.Immutable;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Summary;

/// <summary>All that a builder should have read before sawing, in the order of what it costs: what was found, planks that do not drop in, and the masters.</summary>
public static class BeforeYouSaw
{
    private const int Most = 3;

    public static ImmutableArray<Finding> All(BottomPlan plan) =>
        FindingsText.GravestFirst([
            .. plan.Findings,
            .. NotDroppingIn(plan) is { } fitted ? [fitted] : (Finding[])[],
            .. plan.Panels.SelectMany(Masters),
        ]);

    /// <summary>The first few that cost something, the rest counted; the masters where nothing does.</summary>
    public static IEnumerable<string> First(BottomPlan plan)
    {
        Finding[] all = [.. All(plan).Where(f => f.Rank > Rank.Know)];
        foreach (Finding finding in all.Take(Most))
        {
            yield return FindingsText.Words(finding);
        }

        if (all.Length > Most)
        {
            yield return $"{PlanWords.Count(all.Length - Most, "more finding")} in the list.";
        }
    }

    private static Finding? NotDroppingIn(BottomPlan plan)
    {
        Plank[] planks =
        [
            .. plan
                .AllPlankLayers.SelectMany(l => l.Layer.Starboard.Concat(l.Layer.Port))
                .Where(p => p.DropsIn == false && !p.IsFixed)
                .OrderBy(p => p.Number),
        ];
        if (planks.Length == 0)
        {
            return null;
        }

        string others =
            planks.Length == 1 ? "" : $" (and {PlanWords.Count(planks.Length - 1, "other")})";
        return new(
            Severity.Note,
            Subject.Of($"{planks[0].Id}{others}"),
            "fits at both ends and does not drop in from outside"
        );
    }

    /// <summary>The first layer's master of each panel: all others are laid on from it.</summary>
    private static IEnumerable<Finding> Masters(BottomPlan panel)
    {
        if (
            panel.PlankLayers.FirstOrDefault() is { } layer
            && layer
                .Starboard.Concat(layer.Port)
                .FirstOrDefault(p => p.Number == layer.MasterNumber)
                is { IsFixed: false } master
        )
        {
            yield return new(
                Severity.Note,
                master.Id,
                $"the master of layer {layer.Code}: mark its two seams on the hull and tape them before the rest are cut"
            )
            {
                Rank = Rank.SawAfter,
            };
        }
    }
}
