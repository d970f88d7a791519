using PlankFit.App.Running;
using PlankFit.Draughting.Files;
using PlankFit.Draughting.Svg;
using PlankFit.Export.Stock;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>The plan of cutting: lists, labels, and what is left over.</summary>
internal static class NestFiles
{
    public static FeatureFiles Of(BottomPlan plan) =>
        plan.Nest is not { } nest
            ? FeatureFiles.None
            : new(
                [
                    BookSection.Of(
                        InBook.Boards,
                        "boards",
                        "Boards to buy and to fetch",
                        () => ShoppingPages.Of(plan, nest)
                    ),
                    BookSection.Of(
                        InBook.CutSheets,
                        "cut-sheets",
                        "Cut sheets",
                        () => CutSheets.Of(plan, nest)
                    ),
                ],
                [
                    ListedTable.Of("cut-list", () => NestTables.Pieces(plan, nest)),
                    ListedTable.Of("cuts", () => NestTables.Cuts(plan, nest)),
                    ListedTable.Of(
                        "cuts-by-setting",
                        () => NestTables.CutsBySetting(nest, plan.Job.Units)
                    ),
                    ListedTable.Of("boards", () => NestTables.Boards(plan, nest)),
                    ListedTable.Of("shopping-list", () => NestTables.ToBuy(plan, nest)),
                    ListedTable.Of("offcuts", () => NestTables.OffcutsAsStock(plan, nest)),
                    ListedTable.Of("without-a-place", () => NestTables.Unplaced(nest)),
                ],
                [
                    MadeFiles.File("nest.json", s => NestJson.Write(plan, s)),
                    MadeFiles.FullSize(
                        "labels",
                        plan.Job,
                        "labels",
                        () => LabelPages.Of(plan, nest)
                    ),
                    .. nest.Boards.Select(b => new FileWork(
                        $"drawings of {b.Id}",
                        output => Drawings(output, plan, nest, b)
                    )),
                ]
            );

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
        MadeFiles.Dxf(output, name, BoardPattern.Of(plan, nest.Spec, board), plan.Job);
    }
}
