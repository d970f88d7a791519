using System.Collections.Immutable;
using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>A board drawn to scale: what lies in it, where it is sawn, what is to be cut out.</summary>
internal static class BoardStrip
{
    private const double HatchMm = 1.6;
    private static readonly Pen Hatch = new(0.18, 0.3);
    private static readonly Pen BoardEdge = new(0.25);
    private static readonly Pen Marked = new(0.9);
    private static readonly Pen KeelBar = new(0.8);

    /// <param name="corner">Of the board on the sheet, where its beginning and its lower edge meet.</param>
    public static void Draw(Pad pad, BottomPlan plan, BoardCutList list, Vec2 corner, double factor)
    {
        BoardFrame frame = list.Frame;
        var place = new Placing(factor, factor, corner);
        Box board = new(
            corner.X,
            corner.Y,
            corner.X + (factor * frame.LengthMm),
            corner.Y + (factor * frame.WidthMm)
        );
        var marks = new StripMarks(pad, board);
        pad.Closed(
            [
                new(board.Left, board.Bottom),
                new(board.Right, board.Bottom),
                new(board.Right, board.Top),
                new(board.Left, board.Top),
            ],
            Pens.None,
            Layers.Hull,
            1
        );
        marks.Edges();
        foreach (CutOut cut in list.CutOuts)
        {
            Vec2 low = place[new(cut.FromMm, cut.LowMm)],
                high = place[new(cut.ToMm, cut.HighMm)];
            Hatched(pad, new(low.X, low.Y, high.X, high.Y));
            marks.Keep(new(low.X, low.Y, high.X, high.Y));
        }

        var shapes = list
            .Board.Pieces.Select(p => (Piece: p, Shape: place.Of(frame.Of(p))))
            .ToList();
        foreach ((LaidPiece piece, ImmutableArray<Vec2> shape) in shapes)
        {
            pad.Closed(shape, Pens.None, Layers.Cut, piece.FaceDown ? 0.78 : 0.9);
            marks.Piece(shape);
        }

        foreach (SawCut cut in list.Cuts)
        {
            marks.Cut(cut, place.Of(cut.Line), [place[cut.From], place[cut.To]]);
        }

        foreach ((LaidPiece piece, ImmutableArray<Vec2> shape) in shapes)
        {
            marks.Bar(KeelEnd(piece, shape), KeelBar);
            Vec2 forward = plan.Find(piece.Piece.PlankId) is { } plank
                ? frame
                    .Turned(piece.ToBoard(ForwardArrow.OnFlat(plank)) - piece.ToBoard(default))
                    .Unit()
                : new(1, 0);
            marks.Name(piece, shape, forward);
        }

        marks.Numbers(list.Cuts);
        Sides(pad, list, board);
    }

    /// <summary>The marked end and the marked edge as bold lines outside the board, each with its words.</summary>
    private static void Sides(Pad pad, BoardCutList list, Box board)
    {
        const double Off = 0.9;
        bool across = list.Frame.Stock.GrainAcross;
        double side = across ? board.Right + Off : board.Left - Off,
            below = board.Bottom - Off;
        pad.Line(side, below, side, board.Top, Marked);
        pad.Line(board.Left, below, board.Right, below, Marked);
        pad.Text(
            board.Left,
            below - 1.2 - Letters.Small,
            across ? "turned: marked end below" : "marked edge below, marked end at the left",
            Letters.Small
        );
        if (across)
        {
            pad.Text(
                board.Right,
                below - 1.2 - Letters.Small,
                "marked edge at the right",
                Letters.Small,
                Anchor.BaselineRight
            );
        }
    }

    private static void Hatched(Pad pad, Box box)
    {
        pad.Closed(
            [
                new(box.Left, box.Bottom),
                new(box.Right, box.Bottom),
                new(box.Right, box.Top),
                new(box.Left, box.Top),
            ],
            BoardEdge,
            Layers.Marks,
            1
        );
        for (double x = box.Left - box.Height; x < box.Right; x += HatchMm)
        {
            if (Segments.Clip(new(x, box.Bottom), new(x + box.Height, box.Top), box) is { } line)
            {
                pad.Line(line.From, line.To, Hatch);
            }
        }
    }

    /// <summary>
    /// A bar just inside the end that looks to the keel: the side of the outline that faces the way in which the piece's inboard end lies, moved in by half its
    /// own width.
    /// </summary>
    private static (Vec2 From, Vec2 To) KeelEnd(LaidPiece piece, ImmutableArray<Vec2> shape)
    {
        double way = piece.Turned ? 1 : -1;
        (Vec2 From, Vec2 To) best = (shape[0], shape[0]);
        double most = 0;
        // Sides are taken together as the outline turns: the longest stretch that faces that way.
        ImmutableArray<Vec2> corners = Thinning.Closed(shape, 0.15);
        for (int i = 0; i < corners.Length; i++)
        {
            Vec2 a = corners[i],
                b = corners[(i + 1) % corners.Length],
                outward = -1 * (b - a).Left();
            double faces = way * outward.X;
            if (faces > most && Math.Abs(outward.X) > 0.17 * outward.Norm)
            {
                (most, best) = (faces, (a, b));
            }
        }

        Vec2 along = (best.To - best.From).Norm > 0 ? (best.To - best.From).Unit() : new(0, 1),
            inward = 0.9 * along.Left();
        double trim = Math.Min(1.2, 0.25 * best.From.ChordTo(best.To));
        return (best.From + inward + (trim * along), best.To + inward - (trim * along));
    }
}
