using System.Collections.Immutable;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Fairness;

/// <summary>What a row of the table gives.</summary>
public enum Measure
{
    Height,
    HalfBreadth,
}

/// <summary>The known cells of one row of the table, as a curve over x.</summary>
/// <param name="Stations">Index of each cell's station in the table.</param>
/// <param name="XMm">Where the point lies along the hull: the line's own position where it has one.</param>
/// <param name="ValuesMm">Height or half-breadth.</param>
public sealed record OffsetRow(
    string Line,
    Measure Measure,
    ImmutableArray<int> Stations,
    ImmutableArray<double> XMm,
    ImmutableArray<double> ValuesMm
)
{
    /// <summary>"chine half-breadth", as the table's two columns say.</summary>
    public string Name => $"{Line} {Word(Measure)}";

    public static string Word(Measure measure) =>
        measure == Measure.Height ? "height" : "half-breadth";

    /// <summary>Every row of heights and half-breadths; rows of positions say where points lie and are not judged.</summary>
    public static ImmutableArray<OffsetRow> All(OffsetTable table) =>
        [
            .. table.Lines.SelectMany(line =>
                new[] { Of(table, line, Measure.Height), Of(table, line, Measure.HalfBreadth) }
            ),
        ];

    public static OffsetRow Of(OffsetTable table, OffsetLine line, Measure measure)
    {
        ImmutableArray<double?> cells = Cells(line, measure);
        int[] known =
        [
            .. Enumerable.Range(0, table.Stations.Length).Where(i => cells[i] is not null),
        ];
        return new(
            line.Name,
            measure,
            [.. known],
            [.. known.Select(i => PositionMm(table, line, i))],
            [.. known.Select(i => cells[i]!.Value)]
        );
    }

    public static ImmutableArray<double?> Cells(OffsetLine line, Measure measure) =>
        measure == Measure.Height ? line.HeightsMm : line.HalfBreadthsMm;

    /// <summary>The x of a line's point at a station: the line's own where it has one there.</summary>
    public static double PositionMm(OffsetTable table, OffsetLine line, int station) =>
        (line.PositionsMm.IsDefaultOrEmpty ? null : line.PositionsMm[station])
        ?? table.Stations[station].PositionMm;
}
