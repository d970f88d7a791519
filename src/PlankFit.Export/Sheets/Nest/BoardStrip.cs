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

    /// <summary>Draws it with its beginning and its lower edge at the origin; false where names or numbers found no clear place.</summary>
    /// <param name="aboveMm">Room above the strip for names and numbers.</param>
    public static bool Draw(Pad pad, BottomPlan plan, StripView view, double factor, double aboveMm)
    {
        BoardFrame frame = view.List.Frame;
        var place = new Placing(factor, factor, new(0, -factor * view.LowMm));
        Box strip = new(0, 0, factor * frame.LengthMm, factor * view.HeightMm);
        var marks = new StripMarks(pad, strip, aboveMm);
        pad.Closed(Corners(strip), Pens.None, Layers.Hull, 1);
        marks.Edges();
        if (!view.IsWhole)
        {
            double end = view.List.LanesEndMm;
            foreach (SawnLane lane in view.Lanes)
            {
                marks.Sawn(place[new(0, lane.LowMm)], place[new(end, lane.LowMm)]);
                marks.Sawn(place[new(0, lane.HighMm)], place[new(end, lane.HighMm)]);
                if (end < frame.LengthMm)
                {
                    marks.Sawn(place[new(end, lane.LowMm)], place[new(end, lane.HighMm)]);
                }
            }
        }

        foreach (CutOut cut in view.List.CutOuts)
        {
            double lowMm = Math.Max(cut.LowMm, view.LowMm),
                highMm = Math.Min(cut.HighMm, view.HighMm);
            if (highMm > lowMm)
            {
                Vec2 low = place[new(cut.FromMm, lowMm)],
                    high = place[new(cut.ToMm, highMm)];
                Hatched(pad, new(low.X, low.Y, high.X, high.Y));
                marks.Keep(new(low.X, low.Y, high.X, high.Y));
            }
        }

        var shapes = view.Pieces.Select(p => (Piece: p, Shape: place.Of(frame.Of(p)))).ToList();
        foreach ((LaidPiece piece, ImmutableArray<Vec2> shape) in shapes)
        {
            pad.Closed(shape, Pens.None, Layers.Cut, piece.FaceDown ? 0.78 : 0.9);
            marks.Piece(shape, outlined: view.IsOverview);
        }

        foreach (Offcut kept in Offcuts.Of(plan.Nest!.Spec, view.List))
        {
            Vec2 a = frame.Of(new Vec2(kept.FromMm, kept.LowMm)),
                b = frame.Of(new Vec2(kept.ToMm, kept.HighMm));
            (double low, double high) = (Math.Min(a.Y, b.Y), Math.Max(a.Y, b.Y));
            // Lanes by themselves lie at the saw when the empty end is off.
            bool isOff = !view.IsWhole && Math.Min(a.X, b.X) > view.List.LanesEndMm;
            if (!isOff && high > view.LowMm && low < view.HighMm)
            {
                Vec2 from = place[new(Math.Min(a.X, b.X), Math.Max(low, view.LowMm))],
                    to = place[new(Math.Max(a.X, b.X), Math.Min(high, view.HighMm))];
                marks.Kept(kept.Id, new(from.X, from.Y, to.X, to.Y));
            }
        }

        foreach (SawCut cut in view.Cuts)
        {
            marks.Cut(cut, place.Of(cut.Line), [place[cut.From], place[cut.To]]);
        }

        foreach ((LaidPiece piece, ImmutableArray<Vec2> shape) in shapes)
        {
            marks.Bar(KeelEnd(piece, shape), KeelBar);
        }

        // First those that have room in their own piece: none outside takes it from them.
        var outside = new List<(LaidPiece Piece, ImmutableArray<Vec2> Shape, Vec2 Forward)>();
        foreach ((LaidPiece piece, ImmutableArray<Vec2> shape) in shapes)
        {
            Vec2 forward = plan.Find(piece.Piece.PlankId) is { } plank
                ? frame
                    .Turned(piece.ToBoard(ForwardArrow.OnFlat(plank)) - piece.ToBoard(default))
                    .Unit()
                : new(1, 0);
            if (!marks.Name(piece, shape, forward) && !view.IsOverview)
            {
                outside.Add((piece, shape, forward));
            }
        }

        foreach ((LaidPiece piece, ImmutableArray<Vec2> shape, Vec2 forward) in outside)
        {
            marks.NameOutside(piece, shape, forward);
        }

        marks.Numbers(view.Cuts);
        Sides(pad, view, strip);
        return !marks.AreCrowded;
    }

    private static Vec2[] Corners(Box box) =>
        [
            new(box.Left, box.Bottom),
            new(box.Right, box.Bottom),
            new(box.Right, box.Top),
            new(box.Left, box.Top),
        ];

    /// <summary>The marked end and the marked edge as bold lines outside the board, each with its words; of lanes by themselves only what is theirs of the end or the edge across.</summary>
    private static void Sides(Pad pad, StripView view, Box strip)
    {
        const double Off = 0.9;
        bool across = view.List.Frame.Stock.GrainAcross;
        double side = across ? strip.Right + Off : strip.Left - Off,
            below = strip.Bottom - Off,
            words = below - 1.2 - Letters.Small;
        pad.Line(side, below, side, strip.Top, Marked);
        if (view.IsWhole)
        {
            pad.Line(strip.Left, below, strip.Right, below, Marked);
            pad.Text(
                strip.Left,
                words,
                across ? "turned: marked end below" : "marked edge below, marked end at the left",
                Letters.Small
            );
        }
        else if (!across)
        {
            pad.Text(strip.Left, words, "marked end at the left", Letters.Small);
        }

        if (across)
        {
            pad.Text(
                strip.Right,
                words,
                "marked edge at the right",
                Letters.Small,
                Anchor.BaselineRight
            );
        }
    }

    private static void Hatched(Pad pad, Box box)
    {
        pad.Closed(Corners(box), BoardEdge, Layers.Marks, 1);
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
