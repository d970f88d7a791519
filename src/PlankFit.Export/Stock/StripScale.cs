using PlankFit.Planking.Units;

namespace PlankFit.Export.Stock;

/// <summary>How large a strip is drawn.</summary>
internal static class StripScale
{
    /// <summary>Room for the bold lines at its sides.</summary>
    public const double AsideMm = 2;

    /// <summary>Between a strip and a table beside it, and between two tables.</summary>
    public const double TablesGapMm = 6;

    /// <summary>Of a strip on paper, at the most; more where it has several lanes, so that names and numbers find room in each.</summary>
    private const double StripMm = 42;
    private const double LaneMm = 13;

    /// <summary>Of a strip that shows a board of many lanes whole: with its words it fits under what the first page begins with.</summary>
    private const double OverviewMm = 96;

    /// <summary>A lane that is lower on paper cannot be read, unless it is drawn so large that it is a strip of wood itself.</summary>
    private const double LeastLaneMm = 5;
    private const double Large = 0.25;

    /// <summary>Paper millimetres for one of the board. The table of rips stands to the right of the strip, all others below it.</summary>
    public static double Of(StripView view, LengthUnit unit, double widthMm) =>
        Math.Min(
            (
                widthMm
                - (2 * AsideMm)
                - (view.IsOverview ? BoardTables.Rips(view, unit).WidthMm + TablesGapMm : 0)
            ) / view.LengthMm,
            view.IsOverview
                ? OverviewMm / view.HeightMm
                : Math.Max(StripMm, LaneMm * view.LaneCount) / view.HeightMm
        );

    /// <summary>What lies in the lanes can be read at this scale.</summary>
    public static bool IsReadable(StripView view, double factor) =>
        factor >= Large || view.Lanes.Min(l => l.HighMm - l.LowMm) * factor >= LeastLaneMm;
}
