using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>Lines and letterings of a board's strip, each put where nothing else stands.</summary>
internal sealed class StripMarks(Pad pad, Box board)
{
    private const double RingMm = 2;
    private const double ClearMm = 0.7;

    /// <summary>How far outside the board a number may stand, with a line to its cut.</summary>
    private const double OutsideMm = 3.2;

    private static readonly double[] Along = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9];
    private readonly List<Box> kept = [];
    private readonly List<(Vec2 A, Vec2 B)> lines = [];
    private readonly Dictionary<int, ImmutableArray<Vec2>> cuts = [];

    public void Keep(Box box) => kept.Add(box);

    /// <summary>A cut's line, drawn when its number has a place.</summary>
    public void Cut(SawCut cut, ImmutableArray<Vec2> line, ImmutableArray<Vec2> chord)
    {
        cuts[cut.Number] = cut.ToTheLine ? line : chord;
        for (int i = 1; i < cuts[cut.Number].Length; i++)
        {
            lines.Add((cuts[cut.Number][i - 1], cuts[cut.Number][i]));
        }
    }

    public void Bar((Vec2 From, Vec2 To) bar, Pen pen)
    {
        pad.Line(bar.From, bar.To, pen);
        lines.Add(bar);
    }

    /// <summary>Id, arrow forward, and a word where the outer face is away, at the piece's roomiest place.</summary>
    public void Name(LaidPiece piece, ImmutableArray<Vec2> shape, Vec2 forward)
    {
        Vec2 middle = Interior.DeepestPoint(shape, out double room);
        string id = LetterWidths.Drawable(piece.Piece.Id, true),
            away = piece.FaceDown ? "outer face away" : "";
        foreach (double size in new[] { Letters.Heading, Letters.Bench, Letters.Small })
        {
            double width = Letters.Width(id, size, true),
                arrow = Math.Clamp(1.4 * room, 4, 9),
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

                return;
            }
        }

        Outside(middle, id, forward);
    }

    /// <summary>The cuts' numbers in rings on their lines, or outside the board with a line to them; the cuts' own lines stop at the rings.</summary>
    public void Numbers(ImmutableArray<SawCut> all, Placing place)
    {
        foreach (SawCut cut in all)
        {
            ImmutableArray<Vec2> line = cuts[cut.Number];
            Pen pen = cut.Kind == CutKind.Parting ? Pens.Inner : Pens.Cut;
            string number = cut.Number.ToString(CultureInfo.InvariantCulture);
            double radius = Math.Max(
                RingMm,
                (Letters.Width(number, Letters.Small, true) / 2) + 0.6
            );
            Vec2? on = OnLine(line, radius);
            if (on is { } at)
            {
                foreach (List<Vec2> part in Quads.Outside(line, [Ring(at, radius)]))
                {
                    pad.Open(part, pen, Layers.Cut);
                }
            }
            else
            {
                pad.Open(line, pen, Layers.Cut);
                at = Beside(line, radius);
            }

            pad.Add([new CircleShape(Layers.Marks, Pens.Outer, at, radius, 1)]);
            kept.Add(Around(at, radius));
            pad.Text(at, number, Letters.Small, Anchor.MiddleCentre, true);
        }
    }

    private Vec2? OnLine(ImmutableArray<Vec2> line, double radius)
    {
        foreach (double t in Along)
        {
            Vec2 at = line[0] + (t * (line[^1] - line[0]));
            Box box = Around(at, radius + 0.2);
            if (
                box.Left > board.Left - 6
                && box.Right < board.Right + 6
                && !kept.Any(k => k.Overlaps(box))
                && lines.Count(l => Segments.Clip(l.A, l.B, box) is not null) <= Own(line, box)
            )
            {
                return at;
            }
        }

        return null;
    }

    /// <summary>How many of a line's own stretches come into a box.</summary>
    private static int Own(ImmutableArray<Vec2> line, Box box)
    {
        int own = 0;
        for (int i = 1; i < line.Length; i++)
        {
            own += Segments.Clip(line[i - 1], line[i], box) is null ? 0 : 1;
        }

        return own;
    }

    /// <summary>Above the board where the line ends, moved along until nothing is there; a thin line leads to the cut.</summary>
    private Vec2 Beside(ImmutableArray<Vec2> line, double radius)
    {
        Vec2 top = line[^1].Y >= line[0].Y ? line[^1] : line[0];
        for (int i = 0; ; i++)
        {
            double shift = (i % 2 == 0 ? 1 : -1) * ((i + 1) / 2) * ((2 * radius) + 0.8);
            Vec2 at = new(
                Math.Clamp(top.X + shift, board.Left + radius, board.Right - radius),
                board.Top + OutsideMm
            );
            if (!kept.Any(k => k.Overlaps(Around(at, radius + 0.3))) || i > 200)
            {
                Vec2 foot = at - new Vec2(0, radius);
                pad.Line(foot, new(top.X, Math.Min(top.Y, board.Top)), Pens.Measure);
                return at;
            }
        }
    }

    /// <summary>The name of a piece that is too small for it, above the board.</summary>
    private void Outside(Vec2 middle, string id, Vec2 forward)
    {
        double width = Letters.Width(id, Letters.Small, true) + 6;
        for (int i = 0; ; i++)
        {
            double shift = (i % 2 == 0 ? 1 : -1) * ((i + 1) / 2) * 3;
            double x = Math.Clamp(middle.X + shift, board.Left, board.Right - width);
            Box box = new(x, board.Top + OutsideMm - 1.6, x + width, board.Top + OutsideMm + 1.6);
            if (kept.Any(k => k.Overlaps(box)) && i < 400)
            {
                continue;
            }

            kept.Add(box);
            pad.Text(new(x, box.Middle.Y), id, Letters.Small, Anchor.MiddleLeft, true);
            ForwardArrow.Draw(pad, new(box.Right - 2.2, box.Middle.Y), forward, 4);
            pad.Line(new(x + 1, box.Bottom), middle, Pens.Measure);
            pad.Dot(middle, 0.4);
            return;
        }
    }

    private bool Free(ImmutableArray<Vec2> shape, Box box)
    {
        Box clear = box.Within(-ClearMm);
        Vec2[] corners =
        [
            new(clear.Left, clear.Bottom),
            new(clear.Right, clear.Bottom),
            new(clear.Right, clear.Top),
            new(clear.Left, clear.Top),
        ];
        if (!corners.All(c => Segments.Inside(shape, c)) || kept.Any(k => k.Overlaps(clear)))
        {
            return false;
        }

        return !lines.Any(l => Segments.Clip(l.A, l.B, clear) is not null);
    }

    private static Box Around(Vec2 at, double radius) =>
        new(at.X - radius, at.Y - radius, at.X + radius, at.Y + radius);

    private static Vec2[] Ring(Vec2 at, double radius) => [.. Circles.Polygon(at, radius, 0.02)];
}
