using PlankFit.App.Running;
using PlankFit.Draughting.Files;
using PlankFit.Draughting.Skia;
using PlankFit.Export.Keel;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>The keel held against the planking: tables, chart, patterns of its edges.</summary>
internal static class KeelFiles
{
    public static FeatureFiles Of(BottomPlan plan) =>
        plan.Keel is not { } keel
            ? FeatureFiles.None
            : new(
                [BookSection.Of(InBook.Keel, "keel", "The keel", () => KeelPages.Of(plan, keel))],
                [
                    ListedTable.Of("keel", () => KeelTables.Stations(plan.Job, keel)),
                    ListedTable.Of("keel-cap", () => KeelTables.Cap(plan.Job, keel)),
                ],
                [
                    MadeFiles.File("keel.json", s => KeelJson.Write(plan.Job, keel, s)),
                    .. keel
                        .Layers.Where(l => !l.Between.IsEmpty)
                        .Select(
                            (layer, i) =>
                                new FileWork(
                                    $"pattern of {layer.Spec.Name}",
                                    output => Pattern(output, plan, layer, i + 1)
                                )
                        ),
                ]
            );

    private static void Pattern(
        OutputFolder output,
        BottomPlan plan,
        KeelLayerPlan layer,
        int number
    )
    {
        string name = $"keel-layer-{number}";
        Drawing pattern = KeelEdgePattern.Of(plan, layer);
        MadeFiles.Dxf(output, name, pattern, plan.Job);
        output.Write(
            $"full-size/{name}.pdf",
            s =>
                PdfWriter.Write(
                    s,
                    LongPages.Of(plan.Job, KeelEdgePattern.OnPaper(plan, layer)),
                    pattern.Title
                )
        );
    }
}
