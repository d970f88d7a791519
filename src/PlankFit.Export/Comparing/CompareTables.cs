using System.Collections.Immutable;
using PlankFit.Export.Tables;

namespace PlankFit.Export.Comparing;

/// <summary>Every lay-out in a row, those that could not be laid with their reason: as people read it, and as plain numbers for those who reckon on with it.</summary>
public static class CompareTables
{
    private const double Short = 11;

    public static Table Layouts(Comparison c)
    {
        ImmutableArray<string> keys =
        [
            .. c.Layouts.SelectMany(l => l.Changed.Select(k => k.Key)).Distinct(),
        ];
        return TableOf.Build(
            "compare",
            [
                new("number", 8, (Layout l) => l.Number),
                new("lay-out", 30, l => l.Name),
                .. keys.Select(k => new ColumnOf<Layout>(k, Short, l => l.Of(k))),
                new(
                    "nothing beats it",
                    Short,
                    l =>
                        l.Figures is null ? ""
                        : c.Unbeaten.Contains(l.Number) ? "yes"
                        : "no"
                ),
                .. CompareWords
                    .Columns(c)
                    .Where(m => m.Step != 1 || m == Measure.Boards)
                    .Select(m => new ColumnOf<Layout>(
                        m.Head,
                        24,
                        l => l.Figures is { } f ? m.Words(f, c.Job.Units) : ""
                    )),
                Figure("planks", f => f.Planks),
                Figure("tapered planks", f => f.Tapered),
                Figure("planks refused", f => f.Refused),
                Figure("findings: do not saw", f => f.DoNotSaw),
                Figure("stock mm", f => f.StockMm, 1),
                Figure("stock mm2", f => f.StockMm2),
                Figure("waste mm2", f => f.WasteMm2),
                Figure("waste percent", f => f.WastePercent, 2),
                Figure("bend percent", f => f.Bend.Value, 4),
                Figure("gap mm", f => f.Gap.Value, 3),
                Figure("drift deg", f => f.Drift.Value, 3),
                .. c.Laid.Any(l => l.Figures!.Boards is not null)
                    ?
                    [
                        Figure("boards cut into", f => f.Boards?.Boards),
                        Figure("boards mm2", f => f.Boards?.Mm2),
                        Figure("pieces without a place", f => f.Boards?.Unplaced),
                    ]
                    : (ColumnOf<Layout>[])[],
                new("why it cannot be laid", 60, l => string.Join("; ", l.Why)),
            ],
            c.Layouts
        );
    }

    private static ColumnOf<Layout> Figure(
        string head,
        Func<LaidFigures, double?> of,
        int decimals = 0
    ) => new(head, Short, l => l.Figures is { } f ? of(f) : TableCell.Empty, decimals);
}
