using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Stock;

/// <summary>A board drawn to scale: what lies in it, where it is sawn, what is to be cut out.</summary>
internal static class BoardStrip
{
    private const double HatchMm = 1.6;

    /// <summary>The bold lines lie so far outside the board.</summary>
    private const double OffMm = 0.9;
    private static readonly Pen Hatch = new(0.18, 0.3);
    private static readonly Pen BoardEdge = new(0.25);
    private static readonly Pen Marked = new(0.9);
    private static readonly Pen KeelBar = new(0.8);

    /// <summary>Draws it with its beginning and its lower edge at the origin; returns what stands there, and what found no place.</summary>
    /// <param name="aboveMm">Room above the strip for names and numbers.</param>
    /// <param name="tries">So often numbers are placed anew where one finds no place.</param>
    /// <param name="widthMm">Of the sheet: what a short strip leaves of it is room for names and numbers as well.</param>
    public static StripMarks Draw(
        SheetCanvas pad,
        BottomPlan plan,
        StripView view,
        double factor,
        double aboveMm,
        double widthMm,
        int tries
    )
    {
        BoardFrame frame = view.List.Frame;
        var place = new Placing(factor, factor, new(-factor * view.FromMm, -factor * view.LowMm));
        Box strip = new(0, 0, factor * view.LengthMm, factor * view.HeightMm);
        double right = view.IsOverview
            ? strip.Right
            : Math.Max(strip.Right, widthMm - (2 * StripScale.AsideMm));
        var marks = new StripMarks(
            pad,
            strip,
            new(strip.Left - 1, strip.Bottom + 0.3, right + 1, strip.Top + aboveMm)
        );
        pad.Closed(Corners(strip), Pens.None, Layers.Hull, 1);
        Edges(marks, view, place, strip);
        Sides(marks, pad, view, strip, factor);
        foreach (CutOut cut in view.List.CutOuts)
        {
            if (On(view, place, cut.FromMm, cut.ToMm, cut.LowMm, cut.HighMm) is { } box)
            {
                Hatched(pad, box);
                marks.Fault(box);
            }
        }

        var shapes = view
            .Pieces.Select(p => (Piece: p, Shape: place.Of(frame.Of(p))))
            .Select(p => (p.Piece, p.Shape, Shown: Shown(p.Shape, strip)))
            .Where(p => p.Shown.Length > 2)
            .ToList();
        foreach ((LaidPiece piece, _, ImmutableArray<Vec2> shown) in shapes)
        {
            pad.Closed(shown, Pens.None, Layers.Cut, piece.FaceDown ? 0.78 : 0.9);
            marks.Piece(shown, outlined: view.IsOverview);
        }

        foreach (Offcut kept in Offcuts.Of(view.List.Spec, view.List))
        {
            Vec2 a = frame.Of(new Vec2(kept.FromMm, kept.LowMm)),
                b = frame.Of(new Vec2(kept.ToMm, kept.HighMm));
            if (
                On(
                    view,
                    place,
                    Math.Min(a.X, b.X),
                    Math.Max(a.X, b.X),
                    Math.Min(a.Y, b.Y),
                    Math.Max(a.Y, b.Y)
                ) is
                { } box
            )
            {
                marks.Kept(kept.Id, box);
            }
        }

        HashSet<int> numbered = [.. view.Cuts.Select(c => c.Number)];
        foreach (SawCut cut in view.Lines)
        {
            ImmutableArray<Vec2> line = place.Of(cut.ToTheLine ? cut.Line : [cut.From, cut.To]);
            marks.Cut(
                cut,
                [.. Stretch.OfChain(line, strip.Left, strip.Right)],
                numbered.Contains(cut.Number)
            );
        }

        foreach ((LaidPiece piece, ImmutableArray<Vec2> shape, _) in shapes)
        {
            (Vec2 From, Vec2 To) bar = KeelEnd(piece, shape);
            if (Segments.Clip(bar.From, bar.To, strip) is { } shown)
            {
                marks.Bold(shown.From, shown.To, KeelBar);
            }
        }

        Names(marks, plan, view, [.. shapes.Select(s => (s.Piece, s.Shown))]);
        marks.Numbers(view.Cuts, tries);
        return marks;
    }

    /// <summary>First those that have room in their own piece: none outside takes it from them.</summary>
    private static void Names(
        StripMarks marks,
        BottomPlan plan,
        StripView view,
        List<(LaidPiece Piece, ImmutableArray<Vec2> Shape)> shapes
    )
    {
        var outside = new List<(LaidPiece Piece, ImmutableArray<Vec2> Shape, Vec2 Forward)>();
        foreach ((LaidPiece piece, ImmutableArray<Vec2> shape) in shapes)
        {
            Vec2 forward = plan.Find(piece.Piece.PlankId) is { } plank
                ? view
                    .List.Frame.Turned(
                        piece.ToBoard(ForwardArrow.OnFlat(plank)) - piece.ToBoard(default)
                    )
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
    }

    /// <summary>The board's own edges; of lanes by themselves what is sawn of them, and a waved line where the rest of them is not shown.</summary>
    private static void Edges(StripMarks marks, StripView view, Placing place, Box strip)
    {
        if (view.IsWhole)
        {
            marks.Edges();
            return;
        }

        bool begins = view.FromMm <= view.LanesBeginMm,
            ends = view.ToMm >= view.LanesEndMm;
        for (int l = view.FromLane; l < view.ToLane; l++)
        {
            SawnLane lane = view.List.Lanes[l];
            double laneBegin = view.List.LaneBeginsMm[l],
                laneEnd = view.List.LaneEndsMm[l],
                low = place[new(0, lane.LowMm)].Y,
                high = place[new(0, lane.HighMm)].Y,
                // Lanes that were sawn off apart from each other do not begin and end together.
                left = Math.Max(strip.Left, place[new(laneBegin, lane.LowMm)].X),
                right = Math.Min(strip.Right, place[new(laneEnd, lane.LowMm)].X);
            if (right <= left)
            {
                continue;
            }

            marks.Sawn(new(left, low), new(right, low));
            marks.Sawn(new(left, high), new(right, high));
            if (begins || laneBegin >= view.FromMm)
            {
                marks.Sawn(new(left, low), new(left, high));
            }

            if (ends || laneEnd <= view.ToMm)
            {
                marks.Sawn(new(right, low), new(right, high));
            }
        }

        if (!begins)
        {
            marks.Broken(strip.Left);
        }

        if (!ends)
        {
            marks.Broken(strip.Right);
        }
    }

    private static ImmutableArray<Vec2> Shown(ImmutableArray<Vec2> shape, Box strip) =>
        shape.All(p => p.X >= strip.Left && p.X <= strip.Right)
            ? shape
            : [.. Stretch.Of(shape, strip.Left, strip.Right)];

    /// <summary>What of a rectangle of the board comes into the view, on paper; null where none does.</summary>
    private static Box? On(
        StripView view,
        Placing place,
        double from,
        double to,
        double low,
        double high
    )
    {
        (from, to) = (Math.Max(from, view.FromMm), Math.Min(to, view.ToMm));
        (low, high) = (Math.Max(low, view.LowMm), Math.Min(high, view.HighMm));
        if (to <= from || high <= low)
        {
            return null;
        }

        Vec2 a = place[new(from, low)],
            b = place[new(to, high)];
        return new(a.X, a.Y, b.X, b.Y);
    }

    private static Vec2[] Corners(Box box) =>
        [
            new(box.Left, box.Bottom),
            new(box.Right, box.Bottom),
            new(box.Right, box.Top),
            new(box.Left, box.Top),
        ];

    /// <summary>Words below a strip, one below the other, that say where the marked end and the marked edge are as far as it shows them.</summary>
    public static ImmutableArray<string> SideWords(StripView view, double factor)
    {
        if (!view.List.Frame.Stock.GrainAcross)
        {
            return view.IsWhole ? ["marked edge below, marked end at the left"]
                : ShowsSide(view) ? ["marked end at the left"]
                : [];
        }

        string[] words =
        [
            .. view.IsWhole ? (string[])["turned: marked end below"] : [],
            .. ShowsSide(view) ? (string[])["marked edge at the right"] : [],
        ];
        string together = string.Join(", ", words);
        return words.Length < 2 || Letters.Width(together, Letters.Small) < factor * view.LengthMm
            ? [together]
            : [.. words];
    }

    /// <summary>The side across the grain that is marked.</summary>
    private static bool ShowsSide(StripView view) =>
        view.List.Frame.Stock.GrainAcross
            ? view.ToMm >= view.List.Frame.LengthMm
            : view.FromMm <= 0;

    /// <summary>The marked end and the marked edge as bold lines outside the board, with their words; of lanes by themselves only what is theirs of the end or the edge across.</summary>
    private static void Sides(
        StripMarks marks,
        SheetCanvas pad,
        StripView view,
        Box strip,
        double factor
    )
    {
        double side = view.List.Frame.Stock.GrainAcross ? strip.Right + OffMm : strip.Left - OffMm,
            below = strip.Bottom - OffMm;
        if (ShowsSide(view))
        {
            marks.Bold(new(side, below), new(side, strip.Top), Marked);
        }

        if (view.IsWhole)
        {
            pad.Line(strip.Left, below, strip.Right, below, Marked);
        }

        double y = below - 1.2 - Letters.Small;
        foreach (string words in SideWords(view, factor))
        {
            pad.Text(strip.Left, y, words, Letters.Small);
            y -= Letters.Small * Letters.Leading;
        }
    }

    private static void Hatched(SheetCanvas pad, Box box)
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
