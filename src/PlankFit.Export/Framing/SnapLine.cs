using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Framing;

/// <summary>One line to snap in the view: its points as (x, girth from the keel's side), true size, and what stands at them.</summary>
/// <param name="Figured">Whether the distance from the keel's side stands at every point.</param>
internal sealed record SnapLine(FramingSpec Thing, ImmutableArray<Vec2> Points, bool Figured)
{
    private bool Begins { get; init; }
    private bool Ends { get; init; }

    public static List<SnapLine> Of(BottomPlan plan, SnapFace face)
    {
        var lines = new List<SnapLine>();
        foreach (IGrouping<FramingSpec, SnapMark> marks in face.Marks.GroupBy(m => m.Of))
        {
            lines.Add(
                new(marks.Key, [.. marks.Select(m => new Vec2(m.XMm, m.FromKeelMm))], true)
                {
                    Begins = marks.First().Is == SnapPlace.Begins,
                    Ends = marks.Last().Is == SnapPlace.Ends,
                }
            );
        }

        ImmutableArray<StationOnHull> stations = plan.HullOf(face.Sides[0]).Stations;
        double X(FromStation at) =>
            stations.First(s => s.Name == at.Station).PositionMm + at.AbaftMm;
        foreach (SnapAcross across in face.Across)
        {
            double keel = across.AtKeel is { } k ? X(k) : across.XMm,
                chine = across.AtChine is { } c ? X(c) : across.XMm,
                low = across.OutFromMm ?? 0,
                high = across.OutToMm ?? Girth(face, across.XMm);
            lines.Add(new(across.Of, [new(keel, low), new(chine, high)], false));
        }

        return lines;
    }

    /// <summary>Where it is snapped through: first of all, since words keep off them.</summary>
    public void Dots(SnapPaper strip)
    {
        foreach (Vec2 point in Figured || Thing.LengthMm is not null ? Points : [])
        {
            if (strip.Holds(point.X))
            {
                strip.Pad.Dot(strip.At[point], 0.45);
            }
        }
    }

    public void Draw(SnapPaper strip, LengthUnit unit)
    {
        if (Thing.LengthMm is { } length)
        {
            Place(strip, length, unit);
            return;
        }

        SheetCanvas pad = strip.Pad;
        Vec2[] paper = [.. strip.At.Of(Points)];
        foreach (List<Vec2> piece in Segments.Clip(paper, strip.Shown, false))
        {
            pad.Open(piece, Pens.Outer, Layers.Behind);
        }

        if (!Figured)
        {
            Comes(strip, paper[^1]);
            return;
        }

        Name(strip, paper);
        for (int i = 0; i < Points.Length; i++)
        {
            if (strip.Holds(Points[i].X))
            {
                Figure(strip, i, paper[i], LengthText.PaperNumber(Points[i].Y, unit));
            }
        }
    }

    /// <summary>The name of a thing across the hull above the chine, where it comes out; of one which ends short of it at its end.</summary>
    private void Comes(SnapPaper strip, Vec2 at)
    {
        if (!strip.Holds(Points[^1].X))
        {
            return;
        }

        double above = Thing.OutToMm is null ? 7.2 : 2.6;
        strip.Say(
            from up in new[] { above, above + 3.4, above - 9.8, above + 6.8 }
            from side in new[] { 0.0, 4, -4, 8, -8 }
            select at + new Vec2(side, up),
            FramingWords.Sided(Thing),
            Anchor.MiddleCentre
        );
    }

    /// <summary>
    /// Clear of the line: to the right above it, below it where it rises or ends or has the chine close above; where it begins to the left. Where another figure
    /// stands there already it goes to another of these places, and where all are taken it is left to the list by tape, which has them all.
    /// </summary>
    private void Figure(SnapPaper strip, int i, Vec2 at, string figure)
    {
        bool rises =
                i + 1 < Points.Length
                && Points[i + 1].Y - Points[i].Y > 0.04 * (Points[i + 1].X - Points[i].X),
            below = strip.IsUnderChine(at) || rises || (Ends && i == Points.Length - 1),
            left = Begins && i == 0;
        Lettering At(bool toLeft, bool under) =>
            new(
                Layers.Text,
                Pen.Thin,
                at + new Vec2(toLeft ? -0.9 : 0.9, under ? -3.6 : 1.2),
                figure,
                Letters.Bench,
                toLeft ? Anchor.BaselineRight : Anchor.BaselineLeft
            );
        bool usual = below && !left;
        strip.Pad.TextAtFirst(
            [At(left, usual), At(left, !usual), At(!left, usual), At(!left, !usual)],
            strip.Room
        );
    }

    /// <summary>Over the longest bay of the strip that it runs through, or under it where the chine is close; over another where that is taken.</summary>
    private void Name(SnapPaper strip, Vec2[] paper)
    {
        string name = FramingWords.Sided(Thing);
        strip.Pad.TextAtFirst(
            from bay in Enumerable
                .Range(0, Math.Max(0, Points.Length - 1))
                .Where(i => strip.Holds(Points[i].X) && strip.Holds(Points[i + 1].X))
                .OrderByDescending(i => Points[i + 1].X - Points[i].X)
            from part in new[] { 0.6, 0.5, 0.4, 0.7, 0.3 }
            from other in new[] { false, true }
            let along = (paper[bay + 1] - paper[bay]).Unit()
            let middle = paper[bay] + (part * (paper[bay + 1] - paper[bay]))
            select new Lettering(
                Layers.Text,
                Pen.Thin,
                middle + ((strip.IsUnderChine(middle) != other ? -2.4 : 2.1) * along.Left()),
                name,
                Letters.Bench,
                Anchor.MiddleCentre,
                Math.Atan2(along.Y, along.X) * 180 / Math.PI,
                true
            ),
            strip.Room
        );
    }

    private void Place(SnapPaper strip, double length, LengthUnit unit)
    {
        Vec2 middle = Points[0];
        if (!strip.Holds(middle.X))
        {
            return;
        }

        Vec2 half = new(length / 2, Thing.WidthMm / 2);
        var box = Box.Around([strip.At[middle - half], strip.At[middle + half]]);
        Vec2[] corners =
        [
            new(box.Left, box.Bottom),
            new(box.Right, box.Bottom),
            new(box.Right, box.Top),
            new(box.Left, box.Top),
        ];
        foreach (List<Vec2> piece in Segments.Clip(corners, strip.Shown, true))
        {
            strip.Pad.Open(piece, Pens.Net, Layers.Behind);
        }

        string said = $"{FramingWords.Sided(Thing)}, {LengthText.PaperNumber(middle.Y, unit)}";
        double width = Letters.Width(said, Letters.Bench) + 2;

        // Inside, clear of what stands upright through it; beside it, above or below it where there is no such room.
        double? free = null;
        for (double x = box.Left + 1; free is null && x + width < box.Right; x += 1)
        {
            free = strip.Uprights.Append(box.Middle.X).Any(u => u > x - 1 && u < x + width)
                ? null
                : x;
        }

        IEnumerable<Vec2> inside =
            free is { } left && box.Height > 4 ? [new(left + 1, box.Middle.Y)] : [];
        double before = box.Left - 1.2 - width + 2;
        strip.Say(
            [
                .. inside,
                new(box.Right + 1.2, box.Middle.Y),
                new(before, box.Middle.Y),
                .. from away in new[] { 2.4, 5.2, 8, 10.8 }
                from y in new[] { box.Top + away, box.Bottom - away }
                from x in new[] { box.Left, box.Right - width, box.Right + 1.2, before }
                select new Vec2(x, y),
            ],
            said,
            Anchor.MiddleLeft
        );
    }

    private static double Girth(SnapFace face, double x)
    {
        ImmutableArray<SnapGirth> g = face.Girths;
        int i = Math.Clamp(g.Count(s => s.XMm <= x) - 1, 0, g.Length - 2);
        return g[i].GirthMm
            + ((x - g[i].XMm) / (g[i + 1].XMm - g[i].XMm) * (g[i + 1].GirthMm - g[i].GirthMm));
    }
}
