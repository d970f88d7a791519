using System.Collections.Immutable;
using PlankFit.Export.Words;
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

    public void Draw(SnapPaper on, LengthUnit unit)
    {
        if (Thing.LengthMm is { } length)
        {
            Place(on, length, unit);
            return;
        }

        SheetCanvas pad = on.Pad;
        Vec2[] paper = [.. on.At.Of(Points)];
        foreach (List<Vec2> piece in Segments.Clip(paper, on.Shown, false))
        {
            pad.Open(piece, Pens.Outer, Layers.Behind);
        }

        if (!Figured)
        {
            // Its name above the chine, where it comes out; that of one which ends short of it at its end.
            if (on.Holds(Points[^1].X))
            {
                pad.Text(
                    paper[^1] + new Vec2(0, Thing.OutToMm is null ? 7.2 : 2.6),
                    FramingWords.Name(Thing),
                    Letters.Bench,
                    Anchor.MiddleCentre
                );
            }

            return;
        }

        for (int i = 0; i < Points.Length; i++)
        {
            if (on.Holds(Points[i].X))
            {
                pad.Dot(paper[i], 0.45);
                Figure(on, i, paper[i], LengthText.PaperNumber(Points[i].Y, unit));
            }
        }

        Name(on, paper);
    }

    /// <summary>
    /// Clear of the line: to the right above it, below it where it rises or ends or has the chine close above; where it begins to the left. Where another figure
    /// stands there already it goes to another of these places, and where all are taken it is left to the list by tape, which has them all.
    /// </summary>
    private void Figure(SnapPaper on, int i, Vec2 at, string figure)
    {
        bool rises =
                i + 1 < Points.Length
                && Points[i + 1].Y - Points[i].Y > 0.04 * (Points[i + 1].X - Points[i].X),
            below = on.IsUnderChine(at) || rises || (Ends && i == Points.Length - 1),
            left = Begins && i == 0;
        Lettering At(bool toLeft, bool under) =>
            new(
                Layers.Text,
                Pen.Thin,
                at + new Vec2(toLeft ? -0.9 : 0.9, under ? -3.6 : 1),
                figure,
                Letters.Bench,
                toLeft ? Anchor.BaselineRight : Anchor.BaselineLeft
            );
        bool usual = below && !left;
        Lettering? free = new[]
        {
            At(left, usual),
            At(left, !usual),
            At(!left, usual),
            At(!left, !usual),
        }.FirstOrDefault(l =>
            !on.Pad.Letterings.Any(o => Segments.Around(o).Overlaps(Segments.Around(l)))
        );
        if (free is not null)
        {
            on.Pad.Text(free.At, figure, Letters.Bench, free.Anchor);
        }
    }

    /// <summary>Over the longest bay of the strip that it runs through, or under it where the chine is close.</summary>
    private void Name(SnapPaper on, Vec2[] paper)
    {
        int[] bays =
        [
            .. Enumerable
                .Range(0, Math.Max(0, Points.Length - 1))
                .Where(i => on.Holds(Points[i].X) && on.Holds(Points[i + 1].X)),
        ];
        if (bays.Length == 0)
        {
            return;
        }

        int bay = bays.MaxBy(i => Points[i + 1].X - Points[i].X);
        Vec2 a = paper[bay],
            b = paper[bay + 1],
            along = (b - a).Unit(),
            middle = a + (0.6 * (b - a));
        on.Pad.Text(
            middle + ((on.IsUnderChine(middle) ? -2.4 : 2.1) * along.Left()),
            FramingWords.Name(Thing),
            Letters.Bench,
            Anchor.MiddleCentre,
            true,
            Math.Atan2(along.Y, along.X) * 180 / Math.PI
        );
    }

    private void Place(SnapPaper on, double length, LengthUnit unit)
    {
        Vec2 middle = Points[0];
        if (!on.Holds(middle.X))
        {
            return;
        }

        Vec2 half = new(length / 2, Thing.WidthMm / 2);
        var box = Box.Around([on.At[middle - half], on.At[middle + half]]);
        Vec2[] corners =
        [
            new(box.Left, box.Bottom),
            new(box.Right, box.Bottom),
            new(box.Right, box.Top),
            new(box.Left, box.Top),
        ];
        foreach (List<Vec2> piece in Segments.Clip(corners, on.Shown, true))
        {
            on.Pad.Open(piece, Pens.Net, Layers.Behind);
        }

        on.Pad.Dot(box.Middle, 0.45);
        string said =
            $"{FramingWords.Name(Thing)}, {LengthText.PaperNumber(middle.Y, unit)}"
            + (Thing.Only is { } only ? $", {PlankWords.Of(only)} only" : "");
        double width = Letters.Width(said, Letters.Bench) + 2;

        // Inside, clear of what stands upright through it; beside it where there is no such room.
        double? free = null;
        for (double x = box.Left + 1; free is null && x + width < box.Right; x += 1)
        {
            free = on.Uprights.Append(box.Middle.X).Any(u => u > x - 1 && u < x + width) ? null : x;
        }

        on.Pad.Text(
            new Vec2(free is { } left && box.Height > 4 ? left + 1 : box.Right + 1.2, box.Middle.Y),
            said,
            Letters.Bench,
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
