using System.Collections.Immutable;
using nietras.SeparatedValues;
using PlankFit.Planking.Findings;

namespace PlankFit.Reading.Text;

/// <summary>One line of the table as cells, trimmed; where it stands in the file.</summary>
internal sealed record CsvRow(int Line, ImmutableArray<string> Cells)
{
    public bool IsBlank => Cells.All(string.IsNullOrEmpty);
}

/// <summary>The table's text as rows of cells.</summary>
internal static class CsvRows
{
    public static ImmutableArray<CsvRow> Read(string text, string file, List<Finding> findings)
    {
        string[] lines = CsvLines.Split(text);
        int head = Array.FindIndex(lines, l => !string.IsNullOrWhiteSpace(l));
        if (head < 0)
        {
            return [];
        }

        char separator = CsvLines.Separator(lines[head]);
        for (int i = 0; i < lines.Length; i++)
        {
            if (CsvLines.Clean(lines[i], separator) is { } clean)
            {
                lines[i] = clean;
                continue;
            }

            findings.Add(
                new(
                    Severity.Error,
                    FormattableString.Invariant($"{file}, line {i + 1}"),
                    $"{Quoted.Of(lines[i])}: a quoted cell is not closed; a cell in quotes ends with its quote, and an inch mark in it is doubled: \"5'-4 3/4\"\"\""
                )
            );
            lines[i] = "";
        }

        return Rows(string.Join('\n', lines), separator);
    }

    /// <summary>
    /// Our own lists have an apostrophe before a text that a spreadsheet would take for a formula; no length begins so, since a foot mark follows its number.
    /// </summary>
    private static string Unguarded(string cell) =>
        cell is ['\'', '=' or '+' or '-' or '@', ..] ? cell[1..] : cell;

    private static ImmutableArray<CsvRow> Rows(string text, char separator)
    {
        ImmutableArray<CsvRow>.Builder rows = ImmutableArray.CreateBuilder<CsvRow>();
        using SepReader reader = Sep.New(separator)
            .Reader(o => o with { HasHeader = false, DisableColCountCheck = true, Unescape = true })
            .FromText(text);
        int line = 0;
        foreach (SepReader.Row row in reader)
        {
            // No cell spans lines here, so that rows and lines count alike.
            line++;
            ImmutableArray<string>.Builder cells = ImmutableArray.CreateBuilder<string>(
                row.ColCount
            );
            for (int c = 0; c < row.ColCount; c++)
            {
                cells.Add(Unguarded(row[c].ToString().Trim()));
            }

            var read = new CsvRow(line, cells.MoveToImmutable());
            if (!read.IsBlank)
            {
                rows.Add(read);
            }
        }

        return rows.ToImmutable();
    }
}
