using System.Collections.Immutable;
using PlankFit.App.Running;
using PlankFit.Export.Tables;
using PlankFit.Export.Timber;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>Bend, weight and movement of the timber.</summary>
internal static class TimberFiles
{
    public static ImmutableArray<FileWork> Of(BottomPlan plan) =>
        plan.JobTimber is not { } timber
            ? []
            :
            [
                MadeFiles.Pdf("timber.pdf", plan, "timber", () => TimberSheets.Of(plan, timber)),
                MadeFiles.File("timber.csv", s => Csv.Write(TimberTables.Planks(plan), s)),
                MadeFiles.File("species.csv", s => Csv.Write(TimberTables.Woods(plan), s)),
            ];
}
