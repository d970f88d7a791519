using PlankFit.App.Running;
using PlankFit.Export.Fastenings;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>Fastenings: positions and what to buy.</summary>
internal static class FasteningFiles
{
    public static FeatureFiles Of(BottomPlan plan)
    {
        if (plan.Fastenings is not { } fastenings)
        {
            return FeatureFiles.None;
        }

        (string Name, Lazy<Drawing> Drawing)[] plans =
        [
            .. plan.PlankLayers.Select(layer =>
                (
                    $"fastening-plan-layer-{layer.Number}",
                    new Lazy<Drawing>(() => FasteningPlanView.Of(plan, fastenings, layer))
                )
            ),
        ];
        return new(
            [
                BookSection.Of(
                    InBook.Fastenings,
                    "fastening-plans",
                    "Fastening plans",
                    () => [.. plans.Select(p => p.Drawing.Value)]
                ),
                BookSection.Of(
                    InBook.ToBuy,
                    "fastenings-to-buy",
                    "Fastenings to buy",
                    () => FasteningShopping.Of(plan, fastenings)
                ),
            ],
            [
                ListedTable.Of("fastenings", () => FasteningTables.Points(plan, fastenings)),
                ListedTable.Of("fastenings-to-buy", () => FasteningTables.Totals(plan, fastenings)),
            ],
            [.. plans.Select(p => MadeFiles.Picture(p.Name, plan.Job, () => p.Drawing.Value))]
        );
    }
}
