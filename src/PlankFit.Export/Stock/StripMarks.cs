using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;

namespace PlankFit.Export.Stock;

/// <summary>Lines and letterings of a board's strip, each put where nothing else stands.</summary>
/// <param name="room">The board, and what is left above it and beside it for numbers and names that have no room in it.</param>
internal sealed partial class StripMarks(SheetCanvas pad, Box board, Box room)
{
    private const double ClearMm = 0.7;

    /// <summary>By so much lines are thinned when places clear of them are looked for.</summary>
    private const double ThinMm = 0.05;

    private readonly List<Box> kept = [];

    /// <summary>What is to be cut out of the board: kept clear as well.</summary>
    private readonly List<Box> faults = [];

    /// <summary>Cuts and the board's edges: they stop at a ring that has no other place.</summary>
    private readonly List<(Vec2 A, Vec2 B)> lines = [];

    /// <summary>Bars, and lines from rings and names: nothing may stand on them.</summary>
    private readonly List<(Vec2 A, Vec2 B)> hard = [];

    /// <summary>Round what is kept: no name stands on them, and they stop at a ring.</summary>
    private readonly List<(Vec2 A, Vec2 B)> soft = [];
    private readonly List<ImmutableArray<Vec2>> left = [];
    private readonly List<ImmutableArray<Vec2>> edges = [];
    private readonly List<ImmutableArray<Vec2>> wood = [];

    /// <summary>Of cuts whose greater part is in another strip.</summary>
    private readonly List<ImmutableArray<Vec2>> elsewhere = [];

    /// <summary>Round names that had no place clear of cuts: lines stop there, as at the rings.</summary>
    private readonly List<Vec2[]> gaps = [];
    private readonly Dictionary<int, ImmutableArray<Vec2>> cuts = [];

    /// <summary>Pieces whose names found no place where they are clear of all others with a clear line to their own: they are left out.</summary>
    public List<string> WithoutName { get; } = [];

    /// <summary>No line from a name or a number is longer: from low in a strip it still reaches what is left above.</summary>
    private double FurthestMm => 40 + room.Top - board.Top;

    public void Fault(Box box) => faults.Add(box);

    /// <summary>The shape of a piece: no other's name stands on it.</summary>
    /// <param name="outlined">Where its cuts are not shown.</param>
    public void Piece(ImmutableArray<Vec2> shape, bool outlined)
    {
        wood.Add(shape);
        if (outlined)
        {
            edges.Add([.. shape, shape[0]]);
        }
    }

    /// <summary>The board's own edges, drawn when all numbers have a place.</summary>
    public void Edges()
    {
        Vec2 a = new(board.Left, board.Bottom),
            b = new(board.Right, board.Bottom),
            c = new(board.Right, board.Top),
            d = new(board.Left, board.Top);
        edges.Add([a, b, c, d, a]);
        lines.AddRange([(a, b), (b, c), (c, d), (d, a)]);
    }

    /// <summary>An edge that is sawn already, where lanes are shown by themselves.</summary>
    public void Sawn(Vec2 from, Vec2 to)
    {
        edges.Add([from, to]);
        lines.Add((from, to));
    }

    /// <summary>A bold line: nothing stands on any part of its width.</summary>
    public void Bold(Vec2 from, Vec2 to, Pen pen)
    {
        pad.Line(from, to, pen);
        Vec2 along = to - from,
            half = along.Norm > 0 ? 0.5 * pen.WidthMm * along.Unit().Left() : default;
        hard.Add((from + half, to + half));
        hard.Add((from - half, to - half));
    }

    /// <summary>A side where the strip is broken off: a waved line just inside it.</summary>
    public void Broken(double x)
    {
        const double Deep = 1.2,
            Wave = 4,
            Step = 0.4;
        double middle = x + (x > board.Middle.X ? -Deep : Deep) / 2;
        int steps = Math.Max(4, (int)Math.Ceiling(board.Height / Step));
        pad.Open(
            Enumerable
                .Range(0, steps + 1)
                .Select(i => board.Height * i / steps)
                .Select(y => new Vec2(
                    middle + (Deep / 2 * Math.Sin(2 * Math.PI * y / Wave)),
                    board.Bottom + y
                )),
            Pens.Measure,
            Layers.Hull
        );
        kept.Add(new(middle - (Deep / 2), board.Bottom, middle + (Deep / 2), board.Top));
    }

    /// <summary>What is kept of the board: a broken line just inside it, and its number where that has room.</summary>
    public void Kept(string id, Box box)
    {
        const double InsetMm = 0.6;
        Box inside = box.Within(InsetMm);
        if (inside.Width <= 0 || inside.Height <= 0)
        {
            return;
        }

        Vec2[] corners = Corners(inside);
        left.Add([.. corners, corners[0]]);
        for (int i = 0; i < corners.Length; i++)
        {
            soft.Add((corners[i], corners[(i + 1) % corners.Length]));
        }

        string text = LetterWidths.Drawable(id, false);
        double half = (Letters.Width(text, Letters.Small) / 2) + ClearMm,
            high = (Letters.Small / 2) + ClearMm;
        Vec2 at = inside.Middle;
        Box words = new(at.X - half, at.Y - high, at.X + half, at.Y + high);
        if (words.Width < inside.Width && words.Height < inside.Height && !Taken(words))
        {
            kept.Add(words);
            pad.Text(at, text, Letters.Small, Anchor.MiddleCentre);
        }
    }

    /// <summary>A cut's line, drawn when its number has a place; one that is numbered elsewhere with the board's edges.</summary>
    public void Cut(SawCut cut, ImmutableArray<Vec2> line, bool numbered)
    {
        if (line.Length < 2)
        {
            return;
        }

        if (numbered)
        {
            cuts[cut.Number] = line;
        }
        else
        {
            elsewhere.Add(line);
        }

        ImmutableArray<Vec2> thin = Thinning.Open(line, ThinMm);
        for (int i = 1; i < thin.Length; i++)
        {
            lines.Add((thin[i - 1], thin[i]));
        }
    }

    /// <summary>Id, arrow forward, and a word where the outer face is away, at the piece's roomiest place; false where it has no room for them.</summary>
    public bool Name(LaidPiece piece, ImmutableArray<Vec2> shape, Vec2 forward)
    {
        Vec2 middle = Interior.DeepestPoint(shape, out double deep);
        (string id, string away) = Words(piece);
        foreach (double size in new[] { Letters.Heading, Letters.Bench, Letters.Small })
        {
            double width = Letters.Width(id, size, true),
                arrow = Math.Clamp(1.4 * deep, 4, 9),
                second = away.Length > 0 ? Letters.Width(away, Letters.Small) + 1.5 : 0,
                whole = width + 2 + arrow + second;
            foreach (double shift in new[] { 0, -0.12, 0.12, -0.25, 0.25, -0.35, 0.35 })
            {
                Vec2 at = middle + new Vec2(shift * (shape.Max(p => p.X) - shape.Min(p => p.X)), 0);
                double half = Math.Max(size, arrow * Math.Abs(forward.Y)) / 2 + 0.5;
                Box box = new(at.X - (whole / 2), at.Y - half, at.X + (whole / 2), at.Y + half);
                if (!Free(shape, box))
                {
                    continue;
                }

                kept.Add(box);
                pad.Text(new(box.Left, at.Y), id, size, Anchor.MiddleLeft, true);
                ForwardArrow.Draw(
                    pad,
                    new(box.Left + width + 2 + (arrow / 2), at.Y),
                    forward,
                    arrow
                );
                if (away.Length > 0)
                {
                    pad.Text(new(box.Right, at.Y), away, Letters.Small, Anchor.MiddleRight);
                }

                return true;
            }
        }

        return false;
    }

    private static (string Id, string Away) Words(LaidPiece piece) =>
        (
            LetterWidths.Drawable(piece.Piece.Id.ToString(), true),
            piece.FaceDown ? "outer face away" : ""
        );

    /// <summary>The name of a piece that is too small for it: beside it or above the board, with a line into the piece; never on another piece.</summary>
    public void NameOutside(LaidPiece piece, ImmutableArray<Vec2> shape, Vec2 forward)
    {
        Vec2 middle = Interior.DeepestPoint(shape, out _);
        (string id, string away) = Words(piece);
        const double Arrow = 4,
            Half = 1.7;
        double second = away.Length > 0 ? Letters.Width(away, Letters.Small) + 1.5 : 0,
            half = (Letters.Width(id, Letters.Small, true) + 2 + Arrow + second) / 2;
        // Clear of everything; then over cuts.
        foreach (bool clear in new[] { true, false })
        {
            foreach (
                Vec2 at in StripPlaces
                    .Around(middle, Half + 1, FurthestMm)
                    .OrderBy(p => p.ChordTo(middle))
            )
            {
                Box box = new(at.X - half, at.Y - Half, at.X + half, at.Y + Half),
                    around = box.Within(-ClearMm);
                Vec2 from = new(
                    Math.Clamp(middle.X, box.Left, box.Right),
                    at.Y > middle.Y ? box.Bottom : box.Top
                );
                if (
                    !Within(around)
                    || around.Holds(middle)
                    || Taken(around)
                    || Struck(kept, from, middle, 0)
                    || Struck(faults, from, middle, 0)
                    || Crossed(hard, around)
                    || Crossed(soft, around)
                    || wood.Any(w => w != shape && Covers(w, box))
                    || (clear && Crossed(lines, around))
                )
                {
                    continue;
                }

                kept.Add(box);
                hard.Add((from, middle));
                if (!clear)
                {
                    gaps.Add(Corners(box));
                }

                pad.Text(new(box.Left, at.Y), id, Letters.Small, Anchor.MiddleLeft, true);
                ForwardArrow.Draw(pad, new(box.Right - second - (Arrow / 2), at.Y), forward, Arrow);
                pad.Text(new(box.Right, at.Y), away, Letters.Small, Anchor.MiddleRight);
                pad.Line(from, middle, Pens.Measure);
                pad.Dot(middle, 0.4);
                return;
            }
        }

        WithoutName.Add(id);
    }

    private bool Free(ImmutableArray<Vec2> shape, Box box)
    {
        Box clear = box.Within(-ClearMm);
        if (!Corners(clear).All(c => FlatPolygon.Holds(shape, c)) || Taken(clear))
        {
            return false;
        }

        return !Crossed(lines, clear) && !Crossed(hard, clear) && !Crossed(soft, clear);
    }

    private static Vec2[] Corners(Box box) =>
        [
            new(box.Left, box.Bottom),
            new(box.Right, box.Bottom),
            new(box.Right, box.Top),
            new(box.Left, box.Top),
        ];

    private static bool Covers(ImmutableArray<Vec2> shape, Box box) =>
        FlatPolygon.Holds(shape, box.Middle)
        || shape.Any(box.Holds)
        || Segments.Clip(shape, box, closed: true).Any();

    private static Box Around(Vec2 at, double radius) =>
        new(at.X - radius, at.Y - radius, at.X + radius, at.Y + radius);
}
