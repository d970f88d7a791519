using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Views;

/// <summary>A run of whole planks of a side, as much as goes across the sheet; the last plank of a strip is the first of the next.</summary>
internal sealed record SideStrip(IReadOnlyList<SeenPlank> Planks, string Name)
{
    private const double NamesMm = 9;
    private const double FootMm = 8;
    private const double AsideMm = 10;

    /// <summary>The side cut into so many strips of like width, and the scale at which they fit a box one under the other.</summary>
    public static (SideStrip[] Strips, Ratio Ratio) Fitting(
        IReadOnlyList<SeenPlank> planks,
        int count,
        Box room,
        LengthUnit unit
    )
    {
        // By where the planks' middles lie, so that short planks forward do not make one strip shorter than the others.
        double[] middles = [.. planks.Select(p => Box.Around(p.Outline).Middle.X)];
        double from = middles[0],
            step = (middles[^1] - from) / count;
        var strips = new SideStrip[count];
        int first = 0;
        for (int i = 0; i < count; i++)
        {
            double end = from + ((i + 1) * step);
            int last = first;
            while (
                last < planks.Count - 1
                && (i == count - 1 || Math.Abs(middles[last] - from) < Math.Abs(end - from))
            )
            {
                last++;
            }

            string part =
                count == 1 ? ""
                : i == 0 ? "forward part: "
                : i == count - 1 ? "after part: "
                : "middle part: ";
            strips[i] = new(
                [.. planks.Skip(first).Take(last - first + 1)],
                $"{part}planks {planks[first].Plank.Number} to {planks[last].Plank.Number}"
            );
            first = last;
        }

        double width = strips.Max(s => s.Extent.Width),
            height = strips.Max(s => s.Extent.Height);
        return (
            strips,
            Ratio.Fitting(
                new(0, 0, width, height),
                room.Width - (2 * AsideMm),
                (room.Height / count) - NamesMm - FootMm - 2,
                unit
            )
        );
    }

    private Box Extent => Box.Around(Planks.SelectMany(p => p.Outline));

    public void Draw(
        SheetCanvas pad,
        Box row,
        Ratio ratio,
        IEnumerable<(string Name, Vec2 Lower)> stations,
        Vec2 forward
    )
    {
        Box extent = Extent;
        var at = Placing.Centred(
            extent,
            new Box(row.Left, row.Bottom + FootMm, row.Right, row.Top - NamesMm),
            ratio.Factor,
            ratio.Factor
        );
        var shown = Box.Around([
            at[new(extent.Left, extent.Bottom)],
            at[new(extent.Right, extent.Top)],
        ]);
        var keel = Box.Around(
            Planks
                .SelectMany(p => p.Ends)
                .Where(e => e.At == PanelEdge.Lower)
                .SelectMany(e => e.Edge)
                .Select(p => at[p])
        );
        (string, double X)[] marks =
        [
            .. stations
                .Select(s => (s.Name, at[s.Lower].X))
                .Where(s => s.X >= keel.Left - 0.5 && s.X <= keel.Right + 0.5),
        ];
        double y = shown.Top + 1.5;
        double foot = row.Bottom + (FootMm / 2) - 1.5,
            half = Letters.Width(Name, Letters.Heading) / 2;
        pad.Text(row.Middle.X, foot, Name, Letters.Heading, Anchor.BaselineCentre);
        ForwardArrow.Draw(
            pad,
            new Vec2(row.Middle.X, foot + (Letters.Heading / 2)) + ((half + 14) * forward),
            forward,
            20
        );
        StationNames.Row(pad, marks, y + 4);
        (PlankNumbers.Large with { Within = row.Within(1) }).Draw(
            pad,
            [.. Planks.Select(p => (p.Plank, (IReadOnlyList<Vec2>)at.Of(p.Outline)))],
            new Box(row.Left, shown.Top + 1, row.Right, row.Top)
        );
        foreach ((PanelEdge _, Vec2[] edge) in Planks.SelectMany(p => p.Ends))
        {
            pad.Open(at.Of(edge), Pens.HullEdge, Layers.Hull);
        }

        pad.BreakAroundLetters(Layers.Hull);
        foreach ((_, double x) in marks)
        {
            pad.Line(x, y, x, y + 3, Pens.Measure);
        }
    }
}

/// <summary>A plank as it is seen in a view, true size: its outline, and its ends along the edges of the bottom.</summary>
internal sealed record SeenPlank(Plank Plank, Vec2[] Outline, (PanelEdge At, Vec2[] Edge)[] Ends)
{
    public static SeenPlank Of(Plank plank, Func<Vec3, Vec2> seen) =>
        new(
            plank,
            [.. plank.OnHull.Outline.Select(seen)],
            [.. plank.OnHull.Ends.Select(e => (e.At, e.Outline.Select(seen).ToArray()))]
        );
}
