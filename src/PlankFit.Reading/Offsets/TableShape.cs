using PlankFit.Reading.Text;

namespace PlankFit.Reading.Offsets;

/// <summary>
/// The text of a table of offsets with a station or a row more or fewer; all else stands as it is, comments too. Null where the table has no such place, or a text is no name.
/// </summary>
public static class TableShape
{
    /// <summary>Before the stations stand a row's line and its measure.</summary>
    public const int FirstStation = 2;

    /// <summary>No name is so long, signs.</summary>
    private const int Longest = 200;

    /// <param name="column">From 0, that it is to have; one past the last for the end.</param>
    /// <param name="position">In the row of the stations' own positions; elsewhere the new cells are empty, and filled along the hull.</param>
    public static string? WithStation(TableCells table, int column, string name, string position)
    {
        if (
            table.Head < 0
            || column < FirstStation
            || column > table.Words[table.Head].Length
            || name.Length == 0
            || !IsCell(name)
            || !IsCell(position)
        )
        {
            return null;
        }

        string[] lines = [.. table.Lines];
        for (int i = 0; i < lines.Length; i++)
        {
            // A row that ends before is as good as empty there.
            if (table.Words[i].Length < column)
            {
                continue;
            }

            string value =
                i == table.Head ? name
                : IsOfStations(table, i) ? position
                : "";
            string cell = Quoted(value, table.Separator);
            lines[i] =
                table.Words[i].Length == column
                    ? lines[i] + table.Separator + cell
                    : lines[i]
                        .Insert(
                            CsvLines.Cells(lines[i], table.Separator)[column].From,
                            cell + table.Separator
                        );
        }

        return string.Join(table.NewLine, lines);
    }

    /// <param name="column">From 0; the last station that there is stays.</param>
    public static string? WithoutStation(TableCells table, int column)
    {
        if (
            table.Head < 0
            || column < FirstStation
            || column >= table.Words[table.Head].Length
            || table.Words[table.Head].Length <= FirstStation + 1
        )
        {
            return null;
        }

        string[] lines = [.. table.Lines];
        for (int i = 0; i < lines.Length; i++)
        {
            if (table.Words[i].Length > column)
            {
                // With the separator before it, which every cell of a station has.
                (int from, int to) = CsvLines.Cells(lines[i], table.Separator)[column];
                lines[i] = lines[i].Remove(from - 1, to - from + 1);
            }
        }

        return string.Join(table.NewLine, lines);
    }

    /// <param name="after">The line, from 0, that it is to follow: the head or a row.</param>
    public static string? WithRow(TableCells table, int after, string line, string measure)
    {
        if (
            !IsRow(table, after, andHead: true)
            || !IsCell(line)
            || !IsCell(measure)
            || line.TrimStart().StartsWith('#')
            || (line.Length == 0 && measure.Length == 0)
        )
        {
            return null;
        }

        string row =
            $"{Quoted(line, table.Separator)}{table.Separator}{Quoted(measure, table.Separator)}"
            + new string(
                table.Separator,
                Math.Max(0, table.Words[table.Head].Length - FirstStation)
            );
        return string.Join(
            table.NewLine,
            [.. table.Lines.Take(after + 1), row, .. table.Lines.Skip(after + 1)]
        );
    }

    /// <param name="row">The line, from 0.</param>
    public static string? WithoutRow(TableCells table, int row) =>
        IsRow(table, row, andHead: false)
            ? string.Join(table.NewLine, [.. table.Lines.Take(row), .. table.Lines.Skip(row + 1)])
            : null;

    private static bool IsRow(TableCells table, int row, bool andHead) =>
        table.Head >= 0
        && row < table.Words.Length
        && (andHead ? row >= table.Head : row > table.Head)
        && !table.Words[row].IsEmpty;

    private static bool IsOfStations(TableCells table, int row) =>
        table.Words[row] is ["", var measure, ..]
        && measure.Equals("position", StringComparison.OrdinalIgnoreCase);

    private static bool IsCell(string text) => text.Length <= Longest && !text.Any(char.IsControl);

    private static string Quoted(string text, char separator) =>
        text.Contains(separator, StringComparison.Ordinal) || text.StartsWith('"')
            ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : text;
}
