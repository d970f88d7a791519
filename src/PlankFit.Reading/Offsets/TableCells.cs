using System.Collections.Immutable;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Offsets;

/// <summary>The text of a table of offsets, by its cells: where a value stands, for those who write it anew and for those who tell a person of it.</summary>
/// <param name="Lines">The text's own lines, comments and all.</param>
public sealed record TableCells(
    ImmutableArray<string> Lines,
    ImmutableArray<ImmutableArray<string>> Words,
    int Head,
    char Separator,
    string NewLine
)
{
    public static TableCells Of(string text)
    {
        string[] live = CsvLines.Split(text);
        int head = Array.FindIndex(live, l => !string.IsNullOrWhiteSpace(l));
        char separator = head < 0 ? ',' : CsvLines.Separator(live[head]);
        return new(
            [
                .. text.Replace("\r\n", "\n", StringComparison.Ordinal)
                    .Replace('\r', '\n')
                    .Split('\n'),
            ],
            [.. live.Select(l => WordsOf(l, separator))],
            head,
            separator,
            text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n"
        );
    }

    /// <summary>Line and column, both from 0; null where the table has no such cell.</summary>
    /// <param name="line">The line's name; empty for the stations' own positions.</param>
    public (int Row, int Column)? Find(string line, string measure, string station)
    {
        if (Head < 0)
        {
            return null;
        }

        int column = Words[Head].IndexOf(station, 2);
        for (int i = Head + 1; i < Words.Length; i++)
        {
            ImmutableArray<string> words = Words[i];
            if (
                column >= 0
                && words.Length > column
                && words[0] == line
                && words[1].Equals(measure, StringComparison.OrdinalIgnoreCase)
            )
            {
                return (i, column);
            }
        }

        return null;
    }

    /// <summary>"offsets.csv, line 8, column 9 (station 6)", as the reader tells of faults; null where the table has no such cell.</summary>
    public string? Place(string file, string line, string measure, string station) =>
        Find(line, measure, station) is (int row, int column)
            ? OffsetRows.Cell(file, row + 1, column - 2, station)
            : null;

    /// <summary>The text with one cell written anew, all else as it stands; a line that ends before the cell gets what it lacks.</summary>
    /// <param name="row">From 0; of a line with cells.</param>
    /// <param name="column">From 0.</param>
    /// <exception cref="ArgumentException">There is no such line, or the value would be more than a cell.</exception>
    public string With(int row, int column, string value)
    {
        if (
            row < 0
            || row >= Words.Length
            || Words[row].IsEmpty
            || column < 0
            || value.Any(char.IsControl)
            || (column == 0 && value.StartsWith('#'))
        )
        {
            throw new ArgumentException($"line {row + 1} has no cell {column + 1} for {value}");
        }

        string[] raw = [.. Lines];
        for (int more = Words[row].Length; more <= column; more++)
        {
            raw[row] += Separator;
        }

        (int from, int to) = CsvLines.Cells(raw[row], Separator)[column];
        string written =
            value.Contains(Separator, StringComparison.Ordinal) || value.StartsWith('"')
                ? $"\"{value.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
                : value;
        raw[row] = raw[row][..from] + written + raw[row][to..];
        return string.Join(NewLine, raw);
    }

    private static ImmutableArray<string> WordsOf(string line, char separator) =>
        string.IsNullOrWhiteSpace(line)
            ? []
            : [.. CsvLines.Cells(line, separator).Select(c => Unquoted(line[c.From..c.To].Trim()))];

    /// <summary>Quotes belong to the cell that begins with one; a mark at the end of another is an inch mark.</summary>
    private static string Unquoted(string cell) =>
        cell.Length > 1 && cell[0] == '"' && cell[^1] == '"'
            ? cell[1..^1].Replace("\"\"", "\"", StringComparison.Ordinal)
            : cell;
}
