using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>The two tables of a board: its cuts in their order, and its pieces with running totals.</summary>
internal static class BoardTables
{
    public static CutTable Cuts(BoardCutList list, LengthUnit unit) =>
        new(
            ["cut", "how", "makes", "at lower edge", "at upper edge", "leans", ""],
            [9, 35, 33, 29, 29, 35, CutTable.SketchMm + 2],
            [false, false, false, true, true, true, false],
            [
                .. list.Cuts.Select(c => new CutTableRow(
                    [
                        NumberText.Trimmed(c.Number, 0),
                        BoardCutWords.Kind(c, unit),
                        BoardCutWords.Pieces(c),
                        BoardCutWords.Place(list, c, upper: false, unit),
                        BoardCutWords.Place(list, c, upper: true, unit),
                        BoardCutWords.Lean(c),
                        "",
                    ],
                    c.Kind is CutKind.Rip or CutKind.Edge ? null : c.DegreesFromSquare
                )),
            ]
        );

    public static CutTable Pieces(BoardCutList list, LengthUnit unit) =>
        new(
            ["piece", "begins", "ends", "left beyond"],
            [25, 22, 22, 22],
            [false, true, true, true],
            [
                .. list.Places.Select(p => new CutTableRow(
                    [
                        p.PieceId,
                        LengthText.PaperNumber(p.FromMm, unit),
                        LengthText.PaperNumber(p.ToMm, unit),
                        LengthText.PaperNumber(p.LeftMm, unit),
                    ],
                    null
                )),
            ]
        );
}
