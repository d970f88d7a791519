using System.Globalization;
using System.Text;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Tables;

/// <summary>
/// Comma-separated text by RFC 4180: a head, CR LF, and quotes where a field holds a comma, a quote or a line's end. UTF-8 with a byte order mark, without
/// which spreadsheets take ° for two letters. Numbers have a decimal point whatever the machine's language. A text that a spreadsheet would take for a formula
/// has an apostrophe before it, which our own reader takes off again.
/// </summary>
public static class Csv
{
    private static readonly UTF8Encoding Utf8WithMark = new(encoderShouldEmitUTF8Identifier: true);

    /// <summary>Writes the table. The stream is left open.</summary>
    public static void Write(Table table, Stream stream)
    {
        using StreamWriter writer = new(stream, Utf8WithMark, 16 * 1024, leaveOpen: true);
        writer.NewLine = "\r\n";
        writer.WriteLine(string.Join(',', table.Columns.Select(c => Quoted(Guarded(c.Name)))));
        foreach (IReadOnlyList<TableCell> row in table.Rows)
        {
            writer.WriteLine(
                string.Join(',', row.Select((cell, i) => Field(cell, table.Columns[i])))
            );
        }
    }

    private static string Field(TableCell cell, TableColumn column) =>
        cell.Number is { } number
            ? NumberText.Trimmed(number, column.Decimals)
            : Quoted(Guarded(cell.Text ?? ""));

    /// <summary>Signs that begin a formula, or that a spreadsheet drops before looking for one; -12.5 stays a number.</summary>
    private static string Guarded(string text) =>
        text is ['=' or '+' or '-' or '@' or '\t' or '\r' or '\n', ..]
        && !double.TryParse(
            text,
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out _
        )
            ? "'" + text
            : text;

    private static string Quoted(string text) =>
        text.AsSpan().IndexOfAny(",\"\r\n") < 0
            ? text
            : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
