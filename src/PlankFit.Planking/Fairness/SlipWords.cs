using System.Collections.Immutable;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Fairness;

/// <summary>What probably happened to a cell, in words.</summary>
internal static class SlipWords
{
    /// <summary>Two values are copies of each other within this, mm: a quarter of a millimetre is finer than any table.</summary>
    private const double CopyMm = 0.25;

    /// <summary>"1-3-3 was probably meant (feet and inches exchanged)", "10 mm misread?" or null where nothing known fits.</summary>
    public static string? Of(
        OffsetTable table,
        ImmutableArray<OffsetRow> rows,
        Slip slip,
        WrongCell cell,
        LengthUnit unit
    )
    {
        if (slip.Station is { } moved)
        {
            return $"does station {table.Stations[moved].Name} stand where the table says?";
        }

        if (slip.Cells.Length == 2)
        {
            return $"{TableText.Of(cell.MeantMm!.Value, unit)} was probably meant (exchanged with {Other(table, rows, slip, cell)})";
        }

        if (cell.MeantMm is { } meant && slip.Sure >= CellSlips.Probable)
        {
            return $"{TableText.Of(meant, unit)} was probably meant ({slip.How})";
        }

        return CopiedFrom(table, rows[cell.Row], cell.Point)
            ?? (
                cell.MeantMm is { } perhaps
                    ? $"was {TableText.Of(perhaps, unit)} meant ({slip.How})?"
                    : null
            );
    }

    private static string Other(
        OffsetTable table,
        ImmutableArray<OffsetRow> rows,
        Slip slip,
        WrongCell cell
    )
    {
        WrongCell other = slip.Cells[0] == cell ? slip.Cells[1] : slip.Cells[0];
        OffsetRow row = rows[other.Row];
        return other.Row == cell.Row
            ? $"station {table.Stations[row.Stations[other.Point]].Name}"
            : $"the {row.Name}";
    }

    private static string? CopiedFrom(OffsetTable table, OffsetRow row, int index)
    {
        int station = row.Stations[index];
        double value = row.ValuesMm[index];
        foreach (OffsetLine line in table.Lines)
        {
            foreach (Measure measure in new[] { Measure.Height, Measure.HalfBreadth })
            {
                bool self = line.Name == row.Line && measure == row.Measure;
                if (
                    !self
                    && OffsetRow.Cells(line, measure)[station] is { } other
                    && Math.Abs(other - value) <= CopyMm
                )
                {
                    return $"the same as the {line.Name} {OffsetRow.Word(measure)}: wrong row?";
                }
            }
        }

        foreach (int beside in new[] { index - 1, index + 1 })
        {
            if (
                beside >= 0
                && beside < row.ValuesMm.Length
                && Math.Abs(row.ValuesMm[beside] - value) <= CopyMm
            )
            {
                return $"the same as at station {table.Stations[row.Stations[beside]].Name}: wrong column?";
            }
        }

        return null;
    }
}
