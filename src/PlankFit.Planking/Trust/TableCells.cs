using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;

namespace PlankFit.Planking.Trust;

/// <summary>
/// The numbers of a table that a panel's planks hang on, in order: line by line from the keel outward, station by station, half-breadth before height; then the
/// stations' positions. A vector p over them, mm, is an error of the table: the hull as it stands less the hull as written.
/// </summary>
public sealed class TableCells
{
    /// <summary>Points nearer to each other than this are one, mm: half of what a table in sixteenths can tell apart.</summary>
    private const double OneMm = 0.5;

    private readonly Dictionary<(string Line, int Station, CellKind Kind), int> index = [];

    private TableCells(OffsetTable table, string keel, ImmutableArray<TableCell> cells)
    {
        (Table, Keel, Cells) = (table, keel, cells);
        for (int i = 0; i < cells.Length; i++)
        {
            foreach (string line in cells[i].Lines)
            {
                index.Add((line, cells[i].Station, cells[i].Kind), i);
            }
        }
    }

    /// <summary>As written.</summary>
    public OffsetTable Table { get; }

    /// <summary>The line at the panel's lower edge, about which frames heel.</summary>
    public string Keel { get; }

    public ImmutableArray<TableCell> Cells { get; }

    public int Count => Cells.Length;

    /// <summary>The cells of a job's own panel and of the lines that its keel's layers are given by. A half-breadth of nought is the middle itself and no cell.</summary>
    public static TableCells Of(PlankingJob job)
    {
        OffsetTable table = job.Offsets;
        Panel panel = job.Hull.Panel;
        string[] keelFaces =
        [
            .. job
                .Keel.Layers.Select(l => l.HalfWidth)
                .OfType<KeelHalfWidth.Line>()
                .Select(l => l.Name)
                .Except(panel.Lines)
                .Distinct(),
        ];
        var cells = new List<TableCell>();
        foreach (string line in panel.Lines)
        {
            cells.AddRange(OfLine(table, panel, line));
        }

        foreach (string line in keelFaces)
        {
            OffsetLine of = table.Named(line);
            cells.AddRange(
                Enumerable
                    .Range(0, table.Stations.Length)
                    .Where(i => of.HalfBreadthsMm[i] is > 0)
                    .Select(i => new TableCell(CellKind.HalfBreadth, i, [line], true))
            );
        }

        ImmutableArray<string> all = [.. panel.Lines, .. keelFaces];
        cells.AddRange(
            cells
                .Select(c => c.Station)
                .Distinct()
                .Order()
                .ToArray()
                .Select(i => new TableCell(CellKind.Position, i, all, false))
        );
        return new(table, panel.Lower, [.. cells]);
    }

    private static IEnumerable<TableCell> OfLine(OffsetTable table, Panel panel, string line)
    {
        OffsetLine of = table.Named(line);
        bool keel = panel.HasKeel && line == panel.Lower;
        int? point = Apex(table, panel);
        foreach (int i in of.Known)
        {
            if (i == point && line != panel.Lower)
            {
                // Where keel and chine are one point, it is the keel's.
                continue;
            }

            ImmutableArray<string> lines =
                i == point ? [.. panel.Lines.Where(l => table.Named(l).Has(i))] : [line];
            if (of.HalfBreadthsMm[i] != 0)
            {
                yield return new(CellKind.HalfBreadth, i, lines, keel);
            }

            yield return new(CellKind.Height, i, lines, keel);
        }
    }

    /// <summary>The station at which both edges are one point; null where there is none.</summary>
    private static int? Apex(OffsetTable table, Panel panel)
    {
        if (HullLoft.Stations(table, panel) is not [var first, ..])
        {
            return null;
        }

        OffsetLine lower = table.Named(panel.Lower),
            upper = table.Named(panel.Upper);
        return
            lower.Has(first)
            && upper.Has(first)
            && Math.Abs(lower.HalfBreadthsMm[first]!.Value - upper.HalfBreadthsMm[first]!.Value)
                < OneMm
            && Math.Abs(lower.HeightsMm[first]!.Value - upper.HeightsMm[first]!.Value) < OneMm
            ? first
            : null;
    }

    /// <summary>The place of a cell in the order; null where the table has none there.</summary>
    /// <param name="line">Of a position any line.</param>
    public int? IndexOf(string line, int station, CellKind kind) =>
        index.TryGetValue((line, station, kind), out int i) ? i : null;

    /// <summary>Where along the hull a cell lies, mm: the line's own place where it has one, else the station's.</summary>
    public double PositionOf(TableCell cell)
    {
        ImmutableArray<double?> own = Table.Named(cell.Line).PositionsMm;
        return cell.Kind != CellKind.Position && !own.IsDefaultOrEmpty && own[cell.Station] is { } x
            ? x
            : Table.Stations[cell.Station].PositionMm;
    }

    /// <summary>The table with every cell moved by its part of p, mm.</summary>
    /// <exception cref="ArgumentException">p is not over these cells.</exception>
    public OffsetTable Moved(Vector<double> p)
    {
        if (p.Count != Count)
        {
            throw new ArgumentException($"{p.Count} errors for {Count} cells", nameof(p));
        }

        double By(string line, int station, CellKind kind) =>
            IndexOf(line, station, kind) is { } i ? p[i] : 0;
        return new(
            [
                .. Table.Stations.Select(
                    (s, i) => s with { PositionMm = s.PositionMm + By(Keel, i, CellKind.Position) }
                ),
            ],
            [
                .. Table.Lines.Select(l =>
                    l with
                    {
                        HalfBreadthsMm = Each(
                            l.HalfBreadthsMm,
                            i => By(l.Name, i, CellKind.HalfBreadth)
                        ),
                        HeightsMm = Each(l.HeightsMm, i => By(l.Name, i, CellKind.Height)),
                        PositionsMm = Each(l.PositionsMm, i => By(l.Name, i, CellKind.Position)),
                    }
                ),
            ]
        );
    }

    /// <summary>A job on the table moved so.</summary>
    public PlankingJob Moved(PlankingJob job, Vector<double> p) => job with { Offsets = Moved(p) };

    private static ImmutableArray<double?> Each(
        ImmutableArray<double?> values,
        Func<int, double> by
    ) => values.IsDefaultOrEmpty ? values : [.. values.Select((v, i) => v + by(i))];
}
