using PlankFit.App.Running;
using PlankFit.Export.AsBuilt;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>The hull as it stands: corrections and drift, and the sawn planks of every panel.</summary>
internal static class AsBuiltFiles
{
    public static FeatureFiles Of(BottomPlan plan) =>
        plan.AsBuiltOfAll is not { } standing
            ? FeatureFiles.None
            : new(
                [
                    BookSection.Of(
                        InBook.AsBuilt,
                        "as-built",
                        "The hull as it stands",
                        () => AsBuiltPages.Of(plan, standing)
                    ),
                ],
                [ListedTable.Of("as-built", () => AsBuiltTables.Of(plan.Job, standing))],
                [MadeFiles.File("as-built.json", s => AsBuiltJson.Write(plan.Job, standing, s))]
            );
}
