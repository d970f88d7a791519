using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Fairness;

/// <summary>Where a value stands in the table of offsets.</summary>
/// <param name="Station">The station's name.</param>
/// <param name="StationIndex">Its place in the table.</param>
public readonly record struct OffsetCell(
    string Line,
    Measure Measure,
    string Station,
    int StationIndex
)
{
    /// <summary>As a job names it: chine/half-breadth/6.</summary>
    public string Key => Of(Line, Measure, Station);

    /// <summary>A station's own position, as a job names it: position/6.</summary>
    public static string PositionOf(string station) => $"position/{station}";

    /// <summary>The names of all cells that a table has.</summary>
    public static IEnumerable<string> All(OffsetTable table) =>
        OffsetRow
            .All(table)
            .SelectMany(r => r.Stations.Select(i => Of(r.Line, r.Measure, table.Stations[i].Name)))
            .Concat(table.Stations.Select(s => PositionOf(s.Name)));

    private static string Of(string line, Measure measure, string station) =>
        $"{line}/{OffsetRow.Word(measure)}/{station}";
}
