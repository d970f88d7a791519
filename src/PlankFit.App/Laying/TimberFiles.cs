using System.Collections.Immutable;
using PlankFit.Export;
using PlankFit.Export.Sheets;
using PlankFit.Planking;

namespace PlankFit.App;

/// <summary>Bend, weight and movement of the timber.</summary>
internal static class TimberFiles
{
    public static ImmutableArray<FileWork> Of(BottomPlan plan) =>
        plan.Timber is null
            ? []
            :
            [
                LayFiles.Pdf("timber.pdf", plan, "timber", () => TimberSheets.Of(plan)),
                LayFiles.File("timber.csv", s => Csv.Write(TimberTables.Planks(plan), s)),
                LayFiles.File("woods.csv", s => Csv.Write(TimberTables.Woods(plan), s)),
            ];
}
