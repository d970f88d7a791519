using System.Collections.Immutable;
using System.Drawing;
using SpreadCheetah;
using SpreadCheetah.Styling;
using SpreadCheetah.Worksheets;
using Cell = SpreadCheetah.Cell;

namespace PlankFit.Export.Tables;

/// <summary>A table in a workbook.</summary>
/// <param name="FrozenColumns">So many columns stay in view.</param>
public sealed record WorkbookSheet(Table Table, int FrozenColumns);

/// <summary>
/// Tables as a workbook, a sheet each. Heads stay in view and columns can be filtered. The same tables give the same bytes: no dates inside, zip times constant.
/// </summary>
public static class Workbook
{
    /// <summary>Writes the workbook. The stream is left open.</summary>
    public static void Write(ImmutableArray<WorkbookSheet> sheets, Stream stream)
    {
        using MemoryStream stamped = new();
        Fill(sheets, stamped).GetAwaiter().GetResult();
        stamped.Position = 0;
        ConstantZip.Rewrite(stamped, stream);
    }

    private static async Task Fill(ImmutableArray<WorkbookSheet> sheets, MemoryStream into)
    {
        // The library stamps the document's properties with the current time; none are written, and the sheet "about" says what they would.
        SpreadCheetahOptions options = new() { DocumentProperties = null };
        await using Spreadsheet book = await Spreadsheet.CreateNewAsync(into, options);
        var styles = Styles.AddTo(book);
        foreach (WorkbookSheet sheet in sheets)
        {
            await Sheet(book, styles, sheet.Table, sheet.FrozenColumns);
        }

        await book.FinishAsync();
    }

    private static async Task Sheet(Spreadsheet book, Styles styles, Table table, int frozenColumns)
    {
        WorksheetOptions options = new() { FrozenRows = 1 };
        if (frozenColumns > 0)
        {
            options.FrozenColumns = frozenColumns;
        }

        for (int i = 0; i < table.Columns.Length; i++)
        {
            options.Column(i + 1).Width = table.Columns[i].WidthCharacters;
        }

        if (!table.Rows.IsEmpty)
        {
            string last = SpreadsheetUtility.GetColumnName(table.Columns.Length);
            options.AutoFilter = new($"A1:{last}{table.Rows.Length + 1}");
        }

        await book.StartWorksheetAsync(table.Name, options);
        await book.AddHeaderRowAsync([.. table.Columns.Select(c => c.Name)], styles.Head);
        foreach (ImmutableArray<TableCell> row in table.Rows)
        {
            Cell[] cells = [.. row.Select((cell, i) => Of(cell, table.Columns[i], styles))];
            await book.AddRowAsync(cells);
        }
    }

    private static Cell Of(TableCell cell, TableColumn column, Styles styles) =>
        cell.Number is not { } number ? new(cell.Text, styles.Text)
        : !double.IsFinite(number)
            ? throw new InvalidOperationException(
                $"column \"{column.Name}\" holds a number that is not finite; the list is not written"
            )
        : new(
            Math.Round(number, column.Decimals, MidpointRounding.AwayFromZero) + 0.0,
            styles.Numbers[column.Decimals]
        );

    /// <summary>Cells at the top of their row, heads bold on grey and wrapped, numbers with a fixed number of decimals.</summary>
    private sealed record Styles(StyleId Head, StyleId Text, ImmutableArray<StyleId> Numbers)
    {
        private const int MostDecimals = 5;

        public static Styles AddTo(Spreadsheet book)
        {
            Style head = new()
            {
                Font = { Bold = true },
                Fill = { Color = Color.FromArgb(0xE6, 0xE6, 0xE6) },
                Alignment = { WrapText = true, Vertical = VerticalAlignment.Top },
            };
            Style text = new()
            {
                Alignment = { WrapText = true, Vertical = VerticalAlignment.Top },
            };
            return new(
                book.AddStyle(head),
                book.AddStyle(text),
                [.. Enumerable.Range(0, MostDecimals + 1).Select(d => book.AddStyle(Number(d)))]
            );
        }

        private static Style Number(int decimals) =>
            new()
            {
                Format = NumberFormat.Custom(
                    decimals == 0 ? "0" : "0." + new string('0', decimals)
                ),
                Alignment = { Vertical = VerticalAlignment.Top },
            };
    }
}
