using System.Collections.Immutable;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Summary;

/// <summary>What to look at first: what was found, then planks that ask for more than a cold bend, a straight edge or a plain fit, then the master.</summary>
internal static class SummaryLooks
{
    private const int MostFindings = 3;

    public static ImmutableArray<string> First(BottomPlan plan, ImmutableArray<Plank> planks)
    {
        List<string> looks = [];
        ImmutableArray<Finding> grave =
        [
            .. FindingsText.GravestFirst(plan.Findings).Where(f => f.Severity != Severity.Note),
        ];
        looks.AddRange(grave.Take(MostFindings).Select(f => $"{f.Where}: {f.Message}"));
        if (grave.Length > MostFindings)
        {
            looks.Add(
                $"{PlanWords.Count(grave.Length - MostFindings, "more finding")} in the list."
            );
        }

        string gentlest = plan.Job.Limits.Bend[0].Verdict;
        Add(
            planks
                .Where(p => p.Bend.Verdict != gentlest && !Told(p.Bend.Verdict))
                .OrderByDescending(p => p.Bend.StrainPercent),
            p => p.Bend.Verdict
        );
        Add(
            planks
                .Where(p => !p.StraightEdges && !Told("edges shaped"))
                .OrderByDescending(p => Math.Max(p.WidestGapMm, p.WidestOverlapMm)),
            _ => "straight stock does not close; cut to the line"
        );
        Add(
            planks.Where(p => p.DropsIn == false).OrderBy(p => p.Number),
            _ => "fits at both ends and does not drop in from outside"
        );
        foreach (BottomPlan panel in plan.Panels)
        {
            if (
                panel.PlankLayers.FirstOrDefault() is not { } layer
                || Master(layer) is not { } master
            )
            {
                continue;
            }

            looks.Add(
                $"{master.Id}, the master of layer {layer.Code}: mark its two seams on the hull and tape them before the rest are cut."
            );
        }

        return [.. looks];

        // What a finding says already is not said twice.
        bool Told(string what) =>
            grave.Any(f => f.Message.Contains(what, StringComparison.Ordinal));

        void Add(IEnumerable<Plank> worstFirst, Func<Plank, string> what)
        {
            ImmutableArray<Plank> found = [.. worstFirst];
            if (!found.IsEmpty)
            {
                string others =
                    found.Length == 1 ? "" : $" (and {PlanWords.Count(found.Length - 1, "other")})";
                looks.Add($"{found[0].Id}{others}: {what(found[0])}.");
            }
        }
    }

    private static Plank? Master(PlankLayerPlan layer) =>
        layer.Starboard.Concat(layer.Port).FirstOrDefault(p => p.Number == layer.MasterNumber);
}
