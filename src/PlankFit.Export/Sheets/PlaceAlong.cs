using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Sheets;

/// <summary>A place along the hull that figures on a sheet speak of, as <see cref="Draughting.Lettering.About"/> has it: x in mm, aft, then what it is.</summary>
internal static class PlaceAlong
{
    private const int Decimals = 3;

    public static string Of(double xMm, string words) =>
        $"{NumberText.Trimmed(xMm, Decimals)} {words}";

    /// <summary>Empty where the table has no such station.</summary>
    public static string Station(Job job, string name) =>
        XOf(job, name) is { } x ? Of(x, $"station {name}") : "";

    /// <summary>The same of a cell of the table, line/measure/station.</summary>
    public static string Cell(Job job, string cell) =>
        Station(job, cell[(cell.LastIndexOf('/') + 1)..]);

    public static double? XOf(Job job, string station) =>
        job.Offsets.Stations.FirstOrDefault(s => s.Name == station)?.PositionMm;
}
