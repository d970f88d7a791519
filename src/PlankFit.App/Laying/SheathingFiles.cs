using PlankFit.App.Running;
using PlankFit.Export.Sheathing;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>Cloth: what to order, how it is cut and how it lies, lines to draw before wetting out.</summary>
internal static class SheathingFiles
{
    public static FeatureFiles Of(BottomPlan plan) =>
        plan.Sheathing is not { Layers.IsEmpty: false } sheathing
            ? FeatureFiles.None
            : new(
                [
                    BookSection.Of(
                        InBook.Cloth,
                        "cloth",
                        "Cloth",
                        () => SheathingSheets.Of(plan, sheathing)
                    ),
                ],
                [
                    ListedTable.Of("cloth-order", () => SheathingTables.Order(plan, sheathing)),
                    ListedTable.Of("cloth-pieces", () => SheathingTables.Pieces(plan, sheathing)),
                    ListedTable.Of("cloth-cutting", () => SheathingTables.Strikes(plan, sheathing)),
                    ListedTable.Of("cloth-lines", () => SheathingTables.Lines(plan, sheathing)),
                    ListedTable.Of("cloth-shear", () => SheathingTables.Shear(plan, sheathing)),
                    .. sheathing.Pieces.All(p => p.Darts.IsEmpty)
                        ? []
                        : new[]
                        {
                            ListedTable.Of("cloth-darts", () => DartSheets.Table(sheathing)),
                        },
                ],
                [
                    MadeFiles.File(
                        "sheathing.json",
                        s => SheathingJson.Write(plan.Job, sheathing, s)
                    ),
                    .. sheathing.Pieces.Select(piece => new FileWork(
                        $"pattern of cloth {piece.Id}",
                        output =>
                            MadeFiles.Dxf(
                                output,
                                $"cloth-{piece.Id}",
                                ClothPattern.Of(plan, piece),
                                plan.Job
                            )
                    )),
                ]
            );
}
