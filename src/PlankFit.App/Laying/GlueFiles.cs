using PlankFit.App.Running;
using PlankFit.Export.Glue;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>Resin, glue and the order of work.</summary>
internal static class GlueFiles
{
    public static FeatureFiles Of(BottomPlan plan) =>
        plan.Glue is not { } glue
            ? FeatureFiles.None
            : new(
                [
                    BookSection.Of(
                        InBook.Gluing,
                        "gluing",
                        "Resin, glue and sessions",
                        () => GlueSheets.Of(plan, glue)
                    ),
                ],
                [
                    ListedTable.Of("resin", () => GlueTables.Amounts(glue)),
                    .. glue.Stages.IsEmpty
                        ? []
                        : new[]
                        {
                            ListedTable.Of("batches", () => GlueTables.Batches(glue)),
                            ListedTable.Of("gluing-order", () => GlueTables.Planks(glue)),
                        },
                ],
                [MadeFiles.File("glue.json", s => GlueJson.Write(plan.Job, glue, s))]
            );
}
