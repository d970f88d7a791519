using System.Collections.Immutable;

namespace PlankFit.Export.Tables;

/// <summary>A table put together from columns that each know how to read a row: head, width and content stand in one place.</summary>
internal sealed record ColumnOf<T>(
    string Name,
    double WidthCharacters,
    Func<T, TableCell> Read,
    int Decimals = 0
);

internal static class TableOf
{
    public static Table Build<T>(
        string name,
        ImmutableArray<ColumnOf<T>> columns,
        IEnumerable<T> rows
    ) =>
        new(
            name,
            [.. columns.Select(c => new TableColumn(c.Name, c.WidthCharacters, c.Decimals))],
            [.. rows.Select(row => columns.Select(c => c.Read(row)).ToImmutableArray())]
        );
}
