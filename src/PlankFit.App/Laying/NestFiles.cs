using System.Collections.Immutable;
using PlankFit.Export;
using PlankFit.Export.Dxf;
using PlankFit.Export.Files;
using PlankFit.Export.Sheets;
using PlankFit.Export.Svg;
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
                LayFiles.Pdf("cut-sheets.pdf", plan, "cut sheets", () => CutSheets.Of(plan, nest)),
                new("drawings of boards", output => Drawings(output, plan, nest)),
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

    private static void Drawings(OutputFolder output, BottomPlan plan, NestPlan nest)
    {
        foreach (SawnBoard board in nest.Boards)
        {
            Drawing sheet = CutSheets.Board(plan, board);
            output.Write($"drawings/board-{board.Id}.svg", s => SvgWriter.Write(s, sheet));
            Drawing pattern = BoardPattern.Of(plan, board);
            foreach (
                (string folder, DxfVersion version) in new[]
                {
                    ("r2000", DxfVersion.R2000),
                    ("r12", DxfVersion.R12),
                }
            )
            {
                output.Write(
                    $"dxf/{folder}/board-{board.Id}.dxf",
                    s => DxfWriter.Write(s, pattern, new(version, plan.Job.Output.DxfUnits))
                );
            }
        }
    }
}
