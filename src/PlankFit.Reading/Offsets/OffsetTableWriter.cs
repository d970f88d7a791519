using System.Collections.Immutable;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Units;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Offsets;

/// <summary>The faired copy of a table of offsets: the text as it was, comments and all, with only the moved cells written anew, in the table's notation.</summary>
public static class OffsetTableWriter
{
    /// <summary>The table's text with the moves made in it.</summary>
    /// <exception cref="ArgumentException">A move names a cell that the text does not have.</exception>
    public static string Faired(string text, ImmutableArray<FairingMove> moves, LengthUnit units)
    {
        var cells = TableCells.Of(text);
        string[] raw = [.. cells.Lines];
        foreach (FairingMove move in moves)
        {
            if (
                cells.Find(move.Line, OffsetRow.Word(move.Measure), move.Station)
                is not
                (int row, int column)
            )
            {
                throw new ArgumentException(
                    $"the table has no cell for {move.Line} {OffsetRow.Word(move.Measure)} at station {move.Station}"
                );
            }

            (int from, int to) = CsvLines.Cells(raw[row], cells.Separator)[column];
            raw[row] = raw[row][..from] + TableText.Of(move.NewMm, units) + raw[row][to..];
        }

        return string.Join(cells.NewLine, raw);
    }
}
