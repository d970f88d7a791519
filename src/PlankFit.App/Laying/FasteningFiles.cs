using System.Collections.Immutable;
using PlankFit.App.Running;
using PlankFit.Export.Fastenings;
using PlankFit.Export.Tables;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>Fastenings: positions and what to buy.</summary>
internal static class FasteningFiles
{
    public static ImmutableArray<FileWork> Of(BottomPlan plan) =>
        plan.Fastenings is not { } fastenings
            ? []
            :
            [
                .. plan.PlankLayers.Select(layer =>
                    MadeFiles.Picture(
                        $"drawings/fastening-plan-layer-{layer.Number}",
                        () => FasteningPlanView.Of(plan, fastenings, layer)
                    )
                ),
                MadeFiles.File(
                    "fastenings.csv",
                    s => Csv.Write(FasteningTables.Points(plan, fastenings), s)
                ),
                MadeFiles.File(
                    "fastenings-to-buy.csv",
                    s => Csv.Write(FasteningTables.Totals(plan, fastenings), s)
                ),
                MadeFiles.Pdf(
                    "fastenings-to-buy.pdf",
                    plan,
                    "fastenings to buy",
                    () => FasteningShopping.Of(plan, fastenings)
                ),
            ];
}
