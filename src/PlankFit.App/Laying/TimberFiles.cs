using PlankFit.App.Running;
using PlankFit.Export.Timber;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>Bend, weight and movement of the timber.</summary>
internal static class TimberFiles
{
    public static FeatureFiles Of(BottomPlan plan) =>
        plan.JobTimber is not { } timber
            ? FeatureFiles.None
            : new(
                [
                    BookSection.Of(
                        InBook.Timber,
                        "timber",
                        "Timber: bend, weight, movement",
                        () => TimberSheets.Of(plan, timber)
                    ),
                ],
                [
                    ListedTable.Of("timber", () => TimberTables.Planks(plan)),
                    ListedTable.Of("species", () => TimberTables.OfSpecies(plan), 0),
                ],
                []
            );
}
