using System.Collections.Immutable;
using PlankFit.App.Running;
using PlankFit.Draughting.Files;
using PlankFit.Draughting.Svg;
using PlankFit.Export.Stock;
using PlankFit.Export.Tables;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Nesting;

/// <summary>The plan of cutting: lists, labels, and what is left over.</summary>
internal static class NestFiles
{
    public static ImmutableArray<FileWork> Of(BottomPlan plan) =>
        plan.Nest is not { } nest
            ? []
            :
            [
                MadeFiles.Pdf("cut-sheets.pdf", plan, "cut sheets", () => CutSheets.Of(plan, nest)),
                .. nest.Boards.Select(b => new FileWork(
                    $"drawings of {b.Id}",
                    output => Drawings(output, plan, nest, b)
                )),
                MadeFiles.File("nest.json", s => NestJson.Write(plan, s)),
                MadeFiles.File("cut-list.csv", s => Csv.Write(NestTables.Pieces(plan, nest), s)),
                MadeFiles.File("cuts.csv", s => Csv.Write(NestTables.Cuts(plan, nest), s)),
                MadeFiles.File(
                    "cuts-by-setting.csv",
                    s => Csv.Write(NestTables.CutsBySetting(nest, plan.Job.Units), s)
                ),
                MadeFiles.File(
                    "cut-list.xlsx",
                    s =>
                        Workbook.Write(
                            [.. NestTables.All(plan, nest).Select(t => new WorkbookSheet(t, 1))],
                            s
                        )
                ),
                MadeFiles.File(
                    "shopping-list.csv",
                    s => Csv.Write(NestTables.ToBuy(plan, nest), s)
                ),
                MadeFiles.Pdf(
                    "shopping-list.pdf",
                    plan,
                    "boards for the planks",
                    () => ShoppingPages.Of(plan, nest)
                ),
                MadeFiles.File(
                    "offcuts.csv",
                    s => Csv.Write(NestTables.OffcutsAsStock(plan, nest), s)
                ),
                MadeFiles.Pdf("labels.pdf", plan, "labels", () => LabelPages.Of(plan, nest)),
            ];

    private static void Drawings(
        OutputFolder output,
        BottomPlan plan,
        NestPlan nest,
        SawnBoard board
    )
    {
        string name = $"board-{board.Id}";
        Drawing sheet = CutSheets.Board(plan, nest.Spec, board);
        output.Write($"drawings/{name}.svg", s => SvgWriter.Write(s, sheet));
        MadeFiles.BothDxf(output, name, BoardPattern.Of(plan, nest.Spec, board), plan.Job);
    }
}
