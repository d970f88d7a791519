using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Glue;

/// <summary>Planks that are down, it is said, and that the bottom does not have: another hull's, a slip of the pen, or of before the planks were laid anew.</summary>
internal static class ProgressFindings
{
    public static IEnumerable<Finding> Of(GlueProgress done, Planked planked)
    {
        var known = planked
            .Layers.OfType<PlankLayerPlan>()
            .SelectMany(l => l.Starboard.Concat(l.Port))
            .Select(p => p.Id)
            .ToHashSet();
        PlankId[] strange =
        [
            .. done.Rows.Select(r => r.Plank).OfType<PlankId>().Where(p => !known.Contains(p)),
        ];
        if (strange.Length > 0)
        {
            yield return new(
                Severity.Warning,
                done.Source,
                $"{PlankRuns.Of(strange)}: down by it, and the bottom has no {(strange.Length == 1 ? "such plank" : "such planks")}. What is planned again takes no heed of {(strange.Length == 1 ? "it" : "them")}: look whether another number is meant"
            )
            {
                Rank = Rank.SawAfter,
            };
        }
    }
}
