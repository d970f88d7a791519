using PlankFit.App.Running;
using PlankFit.Export.Structure;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>Stiffness, mass and the bill of materials.</summary>
internal static class StructureFiles
{
    public static FeatureFiles Of(BottomPlan plan) =>
        plan.Structure is not { } structure
            ? FeatureFiles.None
            : new(
                [
                    BookSection.Of(
                        InBook.Structure,
                        "structure",
                        "What it comes to: stiffness, mass, bill",
                        () => StructureSheets.Of(plan, structure)
                    ),
                ],
                [
                    ListedTable.Of(
                        "bill-of-materials",
                        () => StructureTables.Bill(plan, structure),
                        2
                    ),
                    ListedTable.Of("mass", () => StructureTables.Mass(structure)),
                    .. structure.Stations.IsEmpty
                        ? []
                        : new[]
                        {
                            ListedTable.Of("stiffness", () => StructureTables.Stiffness(structure)),
                        },
                ],
                []
            );
}
