using System.Collections.Immutable;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Stock;

/// <summary>The tables of a strip: its cuts in their order, and its pieces with running totals.</summary>
internal static class BoardTables
{
    /// <summary>Beside a strip that shows rips, and what is sawn off before them, and nothing else.</summary>
    public static CutTable Rips(StripView view, LengthUnit unit) =>
        new CutTable(
            ["cut", "rip, whole length", "kerf"],
            [
                9,
                view.Cuts.Any(c => c.Kind == CutKind.EndOff) ? 56 : 31,
                view.Cuts.Any(c => c.Kind == CutKind.EndOff) ? 28 : 24,
            ],
            [false, true, false],
            [
                .. view.Cuts.Select(c => new CutTableRow(
                    [
                        NumberText.Trimmed(c.Number, 0),
                        (
                            c.Kind == CutKind.EndOff
                                ? BoardCutWords.Kind(view.List, c, unit) + ": "
                                : ""
                        ) + BoardCutWords.Place(view.List, c, upper: false, unit),
                        BoardCutWords.KerfSide(c),
                    ],
                    null
                )),
            ]
        ).HoldingWords();

    /// <summary>Of strips of one board, in the order of cutting, each once.</summary>
    public static CutTable Cuts(ImmutableArray<StripView> views, LengthUnit unit) =>
        new(
            ["cut", "how", "makes", "at lower edge", "at upper edge", "leans", ""],
            [9, 42, 33, 29, 29, 33, CutTable.SketchMm + 2],
            [false, false, false, true, true, true, false],
            [
                .. views
                    .SelectMany(v => v.Cuts.Select(c => (v.List, Cut: c)))
                    .DistinctBy(c => c.Cut.Number)
                    .OrderBy(c => c.Cut.Number)
                    .Select(c => Row(c.List, c.Cut, unit)),
            ]
        );

    private static CutTableRow Row(BoardCutList list, SawCut cut, LengthUnit unit) =>
        new(
            [
                NumberText.Trimmed(cut.Number, 0),
                BoardCutWords
                    .Kind(list, cut, unit)
                    .Replace("kerf ", "kerf" + CutTable.Unbroken, StringComparison.Ordinal),
                BoardCutWords.Pieces(cut) + BoardCutWords.LeftLong(list, cut, unit),
                Place(list, cut, upper: false, unit),
                Place(list, cut, upper: true, unit),
                BoardCutWords.Lean(cut),
                "",
            ],
            cut.Kind is CutKind.Rip or CutKind.Edge ? null : cut.DegreesFromSquare
        );

    /// <summary>Broken between its two lengths and nowhere else: 0-2-7 1/4, above 0-6-0 up.</summary>
    private static string Place(BoardCutList list, SawCut cut, bool upper, LengthUnit unit) =>
        BoardCutWords
            .Place(list, cut, upper, unit)
            .Replace(' ', CutTable.Unbroken)
            .Replace("," + CutTable.Unbroken, ", ", StringComparison.Ordinal);

    public static CutTable Pieces(ImmutableArray<StripView> views, LengthUnit unit) =>
        new(
            ["piece", "begins", "ends", "left beyond"],
            [20, 22, 22, 22],
            [false, true, true, true],
            [
                .. views
                    .SelectMany(v => v.Places)
                    .DistinctBy(p => p.PieceId)
                    .Select(p => new CutTableRow(
                        [
                            p.PieceId.ToString(),
                            LengthText.PaperNumber(p.FromMm, unit),
                            LengthText.PaperNumber(p.ToMm, unit),
                            LengthText.PaperNumber(p.LeftMm, unit),
                        ],
                        null
                    )),
            ]
        );
}
