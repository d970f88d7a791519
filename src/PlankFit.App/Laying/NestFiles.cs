using System.Collections.Immutable;
using PlankFit.Export;
using PlankFit.Export.Sheets;
using PlankFit.Planking;

namespace PlankFit.App;

/// <summary>The plan of cutting: lists, labels, and what is left over.</summary>
internal static class NestFiles
{
    public static ImmutableArray<FileWork> Of(BottomPlan plan) =>
        plan.Nest is not { } nest
            ? []
            :
            [
                LayFiles.File("nest.json", s => NestJson.Write(plan, s)),
                LayFiles.File("cut-list.csv", s => Csv.Write(NestTables.Pieces(plan, nest), s)),
                LayFiles.File(
                    "cut-list.xlsx",
                    s =>
                        Workbook.Write(
                            [.. NestTables.All(plan, nest).Select(t => new WorkbookSheet(t, 1))],
                            s
                        )
                ),
                LayFiles.File("shopping-list.csv", s => Csv.Write(NestTables.ToBuy(plan, nest), s)),
                LayFiles.Pdf(
                    "shopping-list.pdf",
                    plan,
                    "boards for the planks",
                    () => ShoppingPages.Of(plan, nest)
                ),
                LayFiles.File(
                    "offcuts.csv",
                    s => Csv.Write(NestTables.OffcutsAsStock(plan, nest), s)
                ),
                LayFiles.Pdf("labels.pdf", plan, "labels", () => LabelPages.Of(plan, nest)),
            ];
}
