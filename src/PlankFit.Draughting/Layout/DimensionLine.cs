using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Layout;

/// <summary>Measuring lines with their figures: slanting strokes at the ends, the figure clear of the line.</summary>
public static class DimensionLine
{
    public static void Across(SheetCanvas pad, double x1, double x2, double y, string figure)
    {
        Stroke(pad, new(x1, y));
        Stroke(pad, new(x2, y));
        double width = Letters.Width(figure, Letters.Bench, true);
        if (width + 4 < x2 - x1)
        {
            // The figure sits in a gap of the line.
            double middle = (x1 + x2) / 2,
                gap = (width / 2) + 1;
            pad.Line(x1, y, middle - gap, y, Pens.Measure);
            pad.Line(middle + gap, y, x2, y, Pens.Measure);
            pad.Text(new(middle, y), figure, Letters.Bench, Anchor.MiddleCentre, true);
        }
        else
        {
            pad.Line(x1, y, x2, y, Pens.Measure);
            pad.Text(new(x2 + 1.5, y), figure, Letters.Bench, Anchor.MiddleLeft, true);
        }
    }

    /// <summary>An upright measuring line without its figure.</summary>
    public static void Up(SheetCanvas pad, double x, double y1, double y2)
    {
        pad.Line(x, y1, x, y2, Pens.Measure);
        Stroke(pad, new(x, y1));
        Stroke(pad, new(x, y2));
    }

    private static void Stroke(SheetCanvas pad, Vec2 at) =>
        pad.Line(at - new Vec2(0.8, 0.8), at + new Vec2(0.8, 0.8), Pens.Outer);
}
