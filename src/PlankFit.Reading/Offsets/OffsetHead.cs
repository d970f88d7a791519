using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Planking.Findings;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Offsets;

/// <summary>The table's first line: line, measure, and a column a station.</summary>
/// <param name="Columns">The names of the stations, left to right.</param>
internal sealed record OffsetHead(ImmutableArray<string> Columns)
{
    public int Width => Columns.Length + 2;

    public static OffsetHead? Read(CsvRow row, string file, List<Finding> findings)
    {
        ImmutableArray<string> cells = row.Cells;
        int used = cells.Length;
        while (used > 0 && cells[used - 1].Length == 0)
        {
            used--;
        }

        string where = FormattableString.Invariant($"{file}, line {row.Line}");
        if (used < 2 || !Is(cells[0], "line") || !Is(cells[1], "measure"))
        {
            findings.Add(
                new(
                    Severity.Error,
                    where,
                    $"the head begins {Quoted.Of(string.Join(",", cells.Take(2)))}: the first line of the table is line,measure and then the names of the stations"
                )
            );
            return null;
        }

        ImmutableArray<string> names = cells[2..used];
        if (names.Length > Bounds.Stations)
        {
            findings.Add(
                new(Severity.Error, where, Bounds.Beyond(names.Length, Bounds.Stations, "stations"))
            );
            return null;
        }

        var firstAt = new Dictionary<string, int>(StringComparer.Ordinal);
        for (int i = 0; i < names.Length; i++)
        {
            string column = FormattableString.Invariant($"{where}, column {i + 3}");
            if (names[i].Length == 0)
            {
                findings.Add(new(Severity.Error, column, "a station without a name"));
            }
            else if (Name.Fault(names[i]) is { } fault)
            {
                findings.Add(
                    new(Severity.Error, column, $"station {Quoted.Of(names[i])}: {fault}")
                );
                names = names.SetItem(i, Quoted.Short(names[i]));
            }
            else if (!firstAt.TryAdd(names[i], i))
            {
                findings.Add(
                    new(
                        Severity.Error,
                        column,
                        $"station {Quoted.Of(names[i])} is given twice, first in column {(firstAt[names[i]] + 3).ToString(CultureInfo.InvariantCulture)}"
                    )
                );
            }
        }

        if (names.IsEmpty)
        {
            findings.Add(new(Severity.Error, where, "the head names no stations"));
            return null;
        }

        return new(names);
    }

    private static bool Is(string cell, string word) =>
        cell.Equals(word, StringComparison.OrdinalIgnoreCase);
}
