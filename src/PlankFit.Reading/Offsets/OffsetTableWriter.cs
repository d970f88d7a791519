using System.Collections.Immutable;
using System.Text;
using PlankFit.Planking;

namespace PlankFit.Reading;

/// <summary>The faired copy of a table of offsets: the text as it was, comments and all, with only the moved cells written anew, in the table's notation.</summary>
public static class OffsetTableWriter
{
    /// <summary>The table's text with the moves made in it.</summary>
    /// <exception cref="ArgumentException">A move names a cell that the text does not have.</exception>
    public static string Faired(string text, ImmutableArray<FairingMove> moves, LengthUnit units)
    {
        string newline = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        string[] raw = text.Replace("\r\n", "\n", StringComparison.Ordinal)
            .Replace('\r', '\n')
            .Split('\n');
        string[] live = CsvLines.Split(text);
        int head = Array.FindIndex(live, l => !string.IsNullOrWhiteSpace(l));
        char separator = head < 0 ? ',' : CsvLines.Separator(live[head]);
        foreach (FairingMove move in moves)
        {
            int row = head < 0 ? -1 : RowOf(live, head, separator, move);
            int column = head < 0 ? -1 : Words(live[head], separator).IndexOf(move.Station, 2);
            if (row < 0 || column < 0)
            {
                throw new ArgumentException(
                    $"the table has no cell for {move.Line} {OffsetRow.Word(move.Measure)} at station {move.Station}"
                );
            }

            (int from, int to) = CsvLines.Cells(raw[row], separator)[column];
            raw[row] = raw[row][..from] + Cell(move.NewMm, units) + raw[row][to..];
            live[row] = raw[row];
        }

        return string.Join(newline, raw);
    }

    /// <summary>Every move, one a row: what was written, what is written now, and by how many millimetres it moved.</summary>
    public static string Moves(ImmutableArray<FairingMove> moves, LengthUnit units)
    {
        var csv = new StringBuilder("line,measure,station,old,new,moved mm\r\n");
        foreach (FairingMove m in moves)
        {
            csv.Append(Quoted(m.Line))
                .Append(',')
                .Append(OffsetRow.Word(m.Measure))
                .Append(',')
                .Append(Quoted(m.Station))
                .Append(',');
            csv.Append(Cell(m.OldMm, units))
                .Append(',')
                .Append(Cell(m.NewMm, units))
                .Append(',')
                .Append(NumberText.Trimmed(m.MoveMm, 3))
                .Append("\r\n");
        }

        return csv.ToString();
    }

    /// <summary>A value as a cell of the table: whole 32nds in feet-inches-eighths, decimals of the unit to 0.01 mm or better elsewhere.</summary>
    private static string Cell(double mm, LengthUnit units) =>
        units switch
        {
            LengthUnit.FeetInchesEighths => LengthText.PaperNumber(mm, units),
            LengthUnit.Millimetre => NumberText.Trimmed(mm, 2),
            LengthUnit.Centimetre => NumberText.Trimmed(mm / 10, 3),
            LengthUnit.Metre => NumberText.Trimmed(mm / 1000, 5),
            LengthUnit.Inch => NumberText.Trimmed(mm / LengthUnits.MmPer(units), 5),
            _ => NumberText.Trimmed(mm / LengthUnits.MmPer(units), 7),
        };

    private static int RowOf(string[] lines, int head, char separator, FairingMove move)
    {
        for (int i = head + 1; i < lines.Length; i++)
        {
            List<string> words = string.IsNullOrWhiteSpace(lines[i])
                ? []
                : Words(lines[i], separator);
            if (
                words.Count > 1
                && words[0] == move.Line
                && words[1] == OffsetRow.Word(move.Measure)
            )
            {
                return i;
            }
        }

        return -1;
    }

    private static List<string> Words(string line, char separator) =>
        [
            .. CsvLines
                .Cells(line, separator)
                .Select(c =>
                    line[c.From..c.To]
                        .Trim()
                        .Trim('"')
                        .Replace("\"\"", "\"", StringComparison.Ordinal)
                ),
        ];

    private static string Quoted(string text) =>
        text.AsSpan().IndexOfAny(',', '"', '\n') < 0
            ? text
            : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
