using PlankFit.Export.Tables;
using PlankFit.Export.Timber;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Lists;

/// <summary>
/// The plank list as a workbook: a sheet of planks, one of ends, one of layers, one of findings, and one that says what the list is of.
/// </summary>
public static class PlankListXlsx
{
    /// <summary>Writes the workbook. The stream is left open.</summary>
    public static void Write(BottomPlan plan, Stream stream) =>
        Workbook.Write(
            [
                new(PlankTables.Planks(plan), 1),
                new(PlankTables.Ends(plan), 1),
                new(PlanTables.Layers(plan), 0),
                .. plan.JobTimber is null
                    ? (WorkbookSheet[])[]
                    : [new(TimberTables.Planks(plan), 1), new(TimberTables.Woods(plan), 0)],
                new(PlanTables.Findings(plan), 0),
                new(PlanTables.About(plan), 0),
            ],
            stream
        );
}
