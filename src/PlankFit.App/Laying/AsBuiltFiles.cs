using System.Collections.Immutable;
using PlankFit.App.Running;
using PlankFit.Export.AsBuilt;
using PlankFit.Export.Tables;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>The hull as it stands: corrections and drift, and the sawn planks of every panel.</summary>
internal static class AsBuiltFiles
{
    public static ImmutableArray<FileWork> Of(BottomPlan plan) =>
        plan.Standing is not { } standing
            ? []
            :
            [
                MadeFiles.File("as-built.json", s => AsBuiltJson.Write(plan.Job, standing, s)),
                MadeFiles.File(
                    "as-built.csv",
                    s => Csv.Write(AsBuiltTables.Of(plan.Job, standing), s)
                ),
                MadeFiles.Pdf(
                    "as-built.pdf",
                    plan,
                    "the hull as it stands",
                    () => AsBuiltPages.Of(plan, standing)
                ),
            ];
}
