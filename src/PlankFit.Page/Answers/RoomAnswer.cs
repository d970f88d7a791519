using System.Collections.Immutable;
using PlankFit.App.Showing;
using PlankFit.Export.Tables;

namespace PlankFit.Pages.Answers;

/// <param name="Pages">How many there are, each a drawing of its own.</param>
internal sealed record SheetAnswer(string Title, int Pages);

/// <param name="Rows">Words, numbers, or nothing.</param>
internal sealed record ListAnswer(
    string Title,
    ImmutableArray<string> Columns,
    ImmutableArray<ImmutableArray<object?>> Rows
)
{
    /// <summary>Cells that speak of a place along the hull: the row, the column, x in mm.</summary>
    public ImmutableArray<PlaceAnswer> Places { get; init; } = [];
}

internal sealed record PlaceAnswer(int Row, int Column, double X);

/// <summary>What a room of sheets shows.</summary>
internal sealed record RoomAnswer(
    int Turn,
    string Name,
    string Title,
    string Lacks,
    ImmutableArray<SheetAnswer> Sheets,
    ImmutableArray<ListAnswer> Tables
)
{
    public static RoomAnswer Of(int turn, ShownRoom room) =>
        new(
            turn,
            room.Name,
            room.Title,
            room.Lacks,
            [.. room.Sheets.Select(s => new SheetAnswer(s.Title, s.Pages.Value.Count))],
            [.. room.Tables.Select(t => List(t.Title, t.Table.Value))]
        );

    private static ListAnswer List(string title, Table table) =>
        new(
            title,
            [.. table.Columns.Select(c => c.Name)],
            [
                .. table.Rows.Select(r =>
                    r.Select(
                            (c, i) =>
                                c.Text
                                ?? (object?)(
                                    c.Number is { } n && double.IsFinite(n)
                                        ? Math.Round(n, table.Columns[i].Decimals)
                                        : null
                                )
                        )
                        .ToImmutableArray()
                ),
            ]
        )
        {
            Places =
            [
                .. table.Rows.SelectMany(
                    (r, row) =>
                        r.Index()
                            .Where(c => c.Item.AtMm is not null)
                            .Select(c => new PlaceAnswer(row, c.Index, c.Item.AtMm!.Value))
                ),
            ],
        };
}
