using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Fairness;

/// <summary>Judges whether every line of a table of offsets runs fair, and names the cells that do not.</summary>
public static class FairnessCheck
{
    /// <summary>
    /// Heights and half-breadths of every line, each over its own x; positions of stations by what all lines say of them. The ends of a row are judged only
    /// through their neighbours: no method tells a wrong end value from a fair one.
    /// </summary>
    /// <param name="unit">The unit the table is written in: slips of the pen are sought in its notation.</param>
    public static FairnessReport Judge(OffsetTable table, LengthUnit unit)
    {
        ImmutableArray<OffsetRow> all = OffsetRow.All(table);
        ImmutableArray<OffsetRow> rows = [.. all.Where(r => WhyNot(r) is null)];
        ImmutableArray<Slip> slips = SlipSearch.Find(table, rows, unit);
        ILookup<int, (Suspicion Cell, bool OfStation)> cells = slips
            .SelectMany(s =>
                s.Cells.Select(c => (c.Row, Judged(table, rows, s, c, unit), s.Station))
            )
            .ToLookup(c => c.Row, c => (c.Item2, c.Station is not null));
        return new(
            [
                .. rows.Select(
                    (row, i) =>
                        new JudgedRow(
                            row,
                            SecondDifferences.Of(row.XMm.AsSpan(), row.ValuesMm.AsSpan()),
                            WorstFirst(cells[i].Select(c => c.Cell))
                        )
                ),
            ],
            WorstFirst(cells.SelectMany(c => c).Where(c => !c.OfStation).Select(c => c.Cell)),
            [
                .. slips
                    .Where(s => s.Station is not null)
                    .Select(s => OfStation(table, rows, s, unit)),
            ],
            [
                .. rows.SelectMany(r => new[] { r.Stations[0], r.Stations[^1] })
                    .Distinct()
                    .Order()
                    .Select(i => table.Stations[i].Name),
            ],
            [
                .. all.Where(r => WhyNot(r) is not null)
                    .Select(r => new Finding(Severity.Note, r.Name, WhyNot(r)!)),
            ]
        );
    }

    private static ImmutableArray<Suspicion> WorstFirst(IEnumerable<Suspicion> cells) =>
        [.. cells.OrderByDescending(s => Math.Abs(s.ResidualMm))];

    private static StationSuspicion OfStation(
        OffsetTable table,
        ImmutableArray<OffsetRow> rows,
        Slip slip,
        LengthUnit unit
    )
    {
        Station station = table.Stations[slip.Station!.Value];
        return new(
            station.Name,
            slip.Station.Value,
            station.PositionMm,
            slip.PositionMm,
            WorstFirst(slip.Cells.Select(c => Judged(table, rows, slip, c, unit))),
            slip.How,
            slip.Sure >= CellSlips.Probable
        );
    }

    private static Suspicion Judged(
        OffsetTable table,
        ImmutableArray<OffsetRow> rows,
        Slip slip,
        WrongCell cell,
        LengthUnit unit
    )
    {
        OffsetRow row = rows[cell.Row];
        int station = row.Stations[cell.Point];
        double value = row.ValuesMm[cell.Point];
        var judged = LeaveOneOut.Of(row.XMm.AsSpan(), row.ValuesMm.AsSpan(), 3);
        return new(
            new(row.Line, row.Measure, table.Stations[station].Name, station),
            value,
            cell.Residual,
            value - cell.Residual,
            Math.Min(1, judged.Gains[cell.Point] / judged.Energy),
            SlipWords.Of(table, rows, slip, cell, unit),
            slip.OrEnd is { } end ? table.Stations[row.Stations[end]].Name : null
        )
        {
            MeantMm = slip.Station is null ? cell.MeantMm : null,
        };
    }

    private static string? WhyNot(OffsetRow row)
    {
        if (row.Stations.Length < SlipSearch.FewestPoints)
        {
            return $"not judged for fairness: {row.Stations.Length} known values, at least {SlipSearch.FewestPoints} are needed";
        }

        for (int i = 1; i < row.XMm.Length; i++)
        {
            if (!(row.XMm[i] > row.XMm[i - 1]))
            {
                return "not judged for fairness: its points do not go steadily aft; check its positions";
            }
        }

        return null;
    }
}
