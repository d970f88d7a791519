using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Stock;

/// <summary>A board to full size for a machine or a plotter: pieces as they are sawn, the board, its faults and what is kept, each on its own layer.</summary>
public static class BoardPattern
{
    private const double LettersMm = 20;

    /// <summary>In the board's own coordinates: x from its marked end, y from its marked edge, marked face up.</summary>
    public static Drawing Of(BottomPlan plan, NestSpec spec, SawnBoard board)
    {
        StockBoard stock = board.Stock;
        SheetCanvas pad = new();
        pad.Closed(Box(0, stock.LengthMm, 0, stock.WidthMm), Pens.Outer, Layers.Frame);
        var frame = new BoardFrame(stock);
        foreach (CutOut cut in frame.CutOuts)
        {
            pad.Closed(
                [.. Box(cut.FromMm, cut.ToMm, cut.LowMm, cut.HighMm).Select(frame.OnBoard)],
                Pens.Inner,
                Layers.Marks
            );
        }

        BoardCutList list = BoardCuts.Of(board, spec);
        foreach (SawCut cut in list.Cuts.Where(c => c.Kind == CutKind.EndOff))
        {
            Vec2 from = frame.OnBoard(cut.From),
                to = frame.OnBoard(cut.To);
            pad.Open([from, to], Pens.Net, Layers.Net);
            // In the empty end, clear of what is kept there by its number.
            Name(
                pad,
                FormattableString.Invariant($"{cut.Number}: {BoardCutWords.Kind(list, cut)}"),
                frame.OnBoard(
                    new(
                        (cut.From.X + (cut.IsNearEnd ? 0 : frame.LengthMm)) / 2,
                        Math.Min(cut.To.Y, cut.From.Y + (2 * LettersMm))
                    )
                )
            );
        }

        foreach (Offcut kept in Offcuts.Of(spec, list))
        {
            pad.Closed(Box(kept.FromMm, kept.ToMm, kept.LowMm, kept.HighMm), Pens.Net, Layers.Net);
            Name(pad, kept.Id, new((kept.FromMm + kept.ToMm) / 2, (kept.LowMm + kept.HighMm) / 2));
        }

        foreach (LaidPiece piece in board.Pieces)
        {
            ImmutableArray<Vec2> outline = piece.Outline;
            pad.Closed(outline, Pens.Cut, Layers.Cut);
            Vec2 at = Interior.DeepestPoint(outline, out _);
            Name(pad, piece.Piece.Id + (piece.FaceDown ? " outer face away" : ""), at);
            if (plan.Find(piece.Piece.PlankId) is { } plank)
            {
                Vec2 forward = (
                    piece.ToBoard(ForwardArrow.OnFlat(plank)) - piece.ToBoard(default)
                ).Unit();
                ForwardArrow.Draw(pad, at + new Vec2(0, -1.6 * LettersMm), forward, 2 * LettersMm);
            }
        }

        return pad.Done(
            $"{plan.Job.Name}: board {board.Id}, full size",
            stock.LengthMm,
            stock.WidthMm
        );
    }

    private static void Name(SheetCanvas pad, string text, Vec2 at) =>
        pad.Text(at, text, LettersMm, Anchor.MiddleCentre);

    private static Vec2[] Box(double x0, double x1, double y0, double y1) =>
        [new(x0, y0), new(x1, y0), new(x1, y1), new(x0, y1)];
}
