using System.Collections.Immutable;
using PlankFit.App.Running;
using PlankFit.Draughting.Files;
using PlankFit.Draughting.Skia;
using PlankFit.Export.Keel;
using PlankFit.Export.Tables;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>The keel held against the planking: tables, chart, patterns of its edges.</summary>
internal static class KeelFiles
{
    public static ImmutableArray<FileWork> Of(BottomPlan plan)
    {
        if (plan.Keel is not { } keel)
        {
            return [];
        }

        return
        [
            MadeFiles.File("keel.json", s => KeelJson.Write(plan.Job, keel, s)),
            MadeFiles.File("keel.csv", s => Csv.Write(KeelTables.Stations(plan.Job, keel), s)),
            MadeFiles.File("keel-cap.csv", s => Csv.Write(KeelTables.Cap(plan.Job, keel), s)),
            MadeFiles.Pdf("keel.pdf", plan, "the keel", () => KeelPages.Of(plan, keel)),
            .. keel
                .Layers.Where(l => !l.Between.IsEmpty)
                .Select(
                    (layer, i) =>
                        new FileWork(
                            $"pattern of {layer.Spec.Name}",
                            output => Pattern(output, plan, layer, i + 1)
                        )
                ),
        ];
    }

    private static void Pattern(
        OutputFolder output,
        BottomPlan plan,
        KeelLayerPlan layer,
        int number
    )
    {
        string name = $"keel-layer-{number}";
        Drawing pattern = KeelEdgePattern.Of(plan, layer);
        MadeFiles.BothDxf(output, name, pattern, plan.Job);
        output.Write(
            $"patterns/{name}.pdf",
            s =>
                PdfWriter.Write(
                    s,
                    LongPages.Of(plan.Job, KeelEdgePattern.OnPaper(plan, layer)),
                    pattern.Title
                )
        );
    }
}
