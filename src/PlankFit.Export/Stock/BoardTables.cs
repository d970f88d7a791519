using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Stock;

/// <summary>The tables of a strip: its cuts in their order, and its pieces with running totals.</summary>
internal static class BoardTables
{
    /// <summary>Beside a strip that shows rips, and what is sawn off before them, and nothing else.</summary>
    public static CutTable Rips(StripView view, LengthUnit unit) =>
        new(
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
        );

    public static CutTable Cuts(StripView view, LengthUnit unit) =>
        new(
            ["cut", "how", "makes", "at lower edge", "at upper edge", "leans", ""],
            [9, 35, 33, 29, 29, 35, CutTable.SketchMm + 2],
            [false, false, false, true, true, true, false],
            [
                .. view.Cuts.Select(c => new CutTableRow(
                    [
                        NumberText.Trimmed(c.Number, 0),
                        BoardCutWords.Kind(view.List, c, unit),
                        BoardCutWords.Pieces(c) + BoardCutWords.LeftLong(view.List, c, unit),
                        Place(view, c, upper: false, unit),
                        Place(view, c, upper: true, unit),
                        BoardCutWords.Lean(c),
                        "",
                    ],
                    c.Kind is CutKind.Rip or CutKind.Edge ? null : c.DegreesFromSquare
                )),
            ]
        );

    /// <summary>Broken between its two lengths and nowhere else: 0-2-7 1/4, above 0-6-0 up.</summary>
    private static string Place(StripView view, SawCut cut, bool upper, LengthUnit unit) =>
        BoardCutWords
            .Place(view.List, cut, upper, unit)
            .Replace(' ', CutTable.Unbroken)
            .Replace("," + CutTable.Unbroken, ", ", StringComparison.Ordinal);

    public static CutTable Pieces(StripView view, LengthUnit unit) =>
        new(
            ["piece", "begins", "ends", "left beyond"],
            [25, 22, 22, 22],
            [false, true, true, true],
            [
                .. view.Places.Select(p => new CutTableRow(
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
