using PlankFit.Export.Tables;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Lists;

/// <summary>The numbered list of planks, one row a plank.</summary>
public static class PlankListCsv
{
    /// <summary>Writes the list. The stream is left open.</summary>
    public static void Write(BottomPlan plan, Stream stream) =>
        Csv.Write(PlankTables.Planks(plan), stream);
}
