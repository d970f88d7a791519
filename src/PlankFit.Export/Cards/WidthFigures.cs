using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Cards;

/// <summary>The widths of a plank measured on its drawing, each figure where no line runs through it.</summary>
internal static class WidthFigures
{
    /// <param name="joints">Lines of its joints, which no figure may stand on either.</param>
    /// <param name="from">Where the strip begins: no figure stands further to the left.</param>
    /// <returns>How far to the right they reach.</returns>
    public static double Draw(
        SheetCanvas pad,
        Plank plank,
        IEnumerable<ImmutableArray<Vec2>> joints,
        Placing at,
        double from,
        LengthUnit unit
    )
    {
        ImmutableArray<WidthAt> widths = WidthAt.Of(plank);
        List<(Vec2 A, Vec2 B)> lines =
        [
            .. Lines(plank, at),
            .. joints.SelectMany(j => Sides(j, at)),
        ];
        List<Box> taken = [];
        string[] figures = [.. widths.Select(w => LengthText.PaperNumber(w.WidthMm, unit))];
        double widest = figures.Max(f => Letters.Width(f, Letters.Bench, true));
        // Too short to hold three: the middle one speaks for all.
        if (widths.Length == 3 && (widths[2].AtMm - widths[0].AtMm) * at.X < 3.5 * (widest + 3))
        {
            (widths, figures) = ([widths[1]], [figures[1]]);
        }

        foreach (WidthAt width in widths)
        {
            (Vec2 low, Vec2 high) = Ends(width, at);
            lines.Add((low, high));
        }

        List<int> outside = [];
        for (int i = 0; i < widths.Length; i++)
        {
            (Vec2 low, Vec2 high) = Ends(widths[i], at);
            if (
                IsOn(plank, widths[i]) && Free(low, high, figures[i], lines, taken, from) is { } box
            )
            {
                DimensionLine.Up(pad, low.X, low.Y, high.Y);
                Put(pad, box, figures[i]);
                taken.Add(box);
            }
            else
            {
                outside.Add(i);
            }
        }

        // Beside the plank one figure stands for all that read alike.
        foreach (int i in outside.DistinctBy(i => figures[i]))
        {
            (Vec2 low, Vec2 high) = Ends(widths[i], at);
            Outside(pad, plank, at, low, high, figures[i], taken);
        }

        return taken.Max(t => t.Right);
    }

    private static (Vec2 Low, Vec2 High) Ends(WidthAt width, Placing at) =>
        (at[new(width.AtMm, width.LowMm)], at[new(width.AtMm, width.LowMm + width.WidthMm)]);

    private static IEnumerable<(Vec2 A, Vec2 B)> Lines(Plank plank, Placing at)
    {
        foreach (ImmutableArray<Vec2> ring in new[] { plank.FlatCut, plank.FlatNet })
        {
            for (int i = 0; i < ring.Length; i++)
            {
                yield return (at[ring[i]], at[ring[(i + 1) % ring.Length]]);
            }
        }

        foreach (
            (Vec2 A, Vec2 B) side in plank
                .Ends.SelectMany(e => new[] { e.OuterLine, e.InnerLine })
                .SelectMany(l => Sides(l, at))
        )
        {
            yield return side;
        }

        foreach (PlankMark mark in plank.Marks)
        {
            Vec2 foot = at[mark.At];
            yield return (foot, foot + (2 * BuiltShape.Paper(mark.Inward, at)));
        }
    }

    private static IEnumerable<(Vec2 A, Vec2 B)> Sides(ImmutableArray<Vec2> line, Placing at) =>
        Enumerable
            .Range(1, Math.Max(0, line.Length - 1))
            .Select(i => (at[line[i - 1]], at[line[i]]));

    /// <summary>Whether the plank is that wide at one place, so that the measuring line lies on wood from end to end.</summary>
    private static bool IsOn(Plank plank, WidthAt width)
    {
        const double Inset = 0.03;
        return new[] { Inset, 1 - Inset }.All(part =>
            FlatPolygon.Holds(plank.FlatNet, new(width.AtMm, width.LowMm + (part * width.WidthMm)))
        );
    }

    private static Box? Free(
        Vec2 low,
        Vec2 high,
        string figure,
        List<(Vec2 A, Vec2 B)> lines,
        List<Box> taken,
        double from
    )
    {
        double width = Letters.Width(figure, Letters.Bench, true);
        foreach (double part in new[] { 0.5, 0.7, 0.3 })
        {
            foreach (double left in new[] { low.X + 1, low.X - 1 - width })
            {
                double y = low.Y + (part * (high.Y - low.Y));
                Box box = new(left, y - (Letters.Bench / 2), left + width, y + (Letters.Bench / 2));
                Box room = box.Within(-0.6);
                if (
                    left >= from
                    && !taken.Any(t => t.Overlaps(box.Within(-1.4)))
                    && !lines.Any(l => Segments.Clip(l.A, l.B, room) is not null)
                )
                {
                    return box;
                }
            }
        }

        return null;
    }

    /// <summary>Beside the plank, with lines led out from the edges.</summary>
    private static void Outside(
        SheetCanvas pad,
        Plank plank,
        Placing at,
        Vec2 low,
        Vec2 high,
        string figure,
        List<Box> taken
    )
    {
        double x = taken.Select(t => t.Right + 2).Append(plank.FlatCut.Max(p => at[p].X) + 5).Max();
        // Led out from the corners that stand that far out, not from thin air.
        foreach (double level in new[] { low.Y, high.Y })
        {
            double from = plank.FlatNet.Select(p => at[p]).MinBy(p => Math.Abs(p.Y - level)).X;
            pad.Line(from, level, x + 1.5, level, Pens.Measure);
        }

        DimensionLine.Up(pad, x, low.Y, high.Y);
        double y = (low.Y + high.Y) / 2,
            width = Letters.Width(figure, Letters.Bench, true);
        // Where the measure is lower than its figure the lines led out run on into it.
        double clear = high.Y - low.Y > Letters.Bench + 0.6 ? 1.2 : 2.1;
        Box box = new(
            x + clear,
            y - (Letters.Bench / 2),
            x + clear + width,
            y + (Letters.Bench / 2)
        );
        Put(pad, box, figure);
        taken.Add(box);
    }

    private static void Put(SheetCanvas pad, Box box, string figure) =>
        pad.Text(box.Left, box.Bottom, figure, Letters.Bench, Anchor.BaselineLeft, true);
}
