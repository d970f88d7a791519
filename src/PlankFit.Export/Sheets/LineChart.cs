using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Sheets;

/// <summary>One line of a chart, and the places on it that were measured.</summary>
internal sealed record ChartLine(string Name, Pen Pen, ImmutableArray<Vec2> Points)
{
    public ImmutableArray<Vec2> Dots { get; init; } = [];
}

/// <summary>A chart over named places along one axis, with a zero line, levels and a legend.</summary>
/// <param name="Places">Where the upright lines stand and what they are called.</param>
/// <param name="Unit">Values are lengths, mm; levels are whole steps of the job's rule.</param>
/// <param name="Level">How a value is written beside its level.</param>
internal sealed record LineChart(
    string Title,
    ImmutableArray<ChartLine> Lines,
    ImmutableArray<(double At, string Name)> Places,
    LengthUnit Unit,
    Func<double, string> Level
)
{
    private const double ScaleColumnMm = 18;

    public void Draw(SheetCanvas pad, Box box)
    {
        IEnumerable<Vec2> all = Lines.SelectMany(l => l.Points.Concat(l.Dots));
        Box plot = new(box.Left + ScaleColumnMm, box.Bottom + 8, box.Right - 4, box.Top - 14);
        double from = Places.Min(p => p.At),
            to = Math.Max(Places.Max(p => p.At), from + 1);
        var axis = ChartAxis.OfLengths(
            plot,
            from,
            to,
            all.Append(new(0, 0)).Min(p => p.Y),
            all.Append(new(0, 0)).Max(p => p.Y),
            Unit
        );
        Vec2 At(Vec2 p) => axis.At(p.X, p.Y);
        pad.Text(box.Left, box.Top - Letters.Bench, Title, Letters.Bench, bold: true);
        Legend(pad, box);
        foreach (double v in axis.Levels())
        {
            double y = axis.Y(v);
            pad.Line(plot.Left, y, plot.Right, y, Pens.Rule);
            pad.Text(new(plot.Left - 2, y), Level(v), Letters.Small, Anchor.MiddleRight);
        }

        double zero = At(new(from, 0)).Y,
            last = double.NegativeInfinity;
        pad.Line(plot.Left, zero, plot.Right, zero, Pens.Tick);
        foreach ((double at, string name) in Places)
        {
            double x = At(new(at, 0)).X;
            pad.Line(x, plot.Bottom, x, plot.Top, Pens.Rule);
            string shown = Letters.Shortened(name, Letters.Small, 16);
            if (x - last > Letters.Width(shown, Letters.Small) + 1.5)
            {
                pad.Text(new(x, plot.Bottom - 4.5), shown, Letters.Small, Anchor.BaselineCentre);
                last = x;
            }
        }

        foreach (ChartLine line in Lines)
        {
            pad.Open(line.Points.Select(At), line.Pen);
            foreach (Vec2 dot in line.Dots)
            {
                pad.Dot(At(dot), 0.9);
            }
        }
    }

    private void Legend(SheetCanvas pad, Box box)
    {
        double left = box.Left,
            y = box.Top - 8;
        foreach (ChartLine line in Lines)
        {
            pad.Line(left, y, left + 12, y, line.Pen);
            pad.Text(new(left + 14, y), line.Name, Letters.Small, Anchor.MiddleLeft);
            left += 20 + Letters.Width(line.Name, Letters.Small);
        }

        if (Lines.Any(l => !l.Dots.IsEmpty))
        {
            pad.Dot(new(left + 2, y), 0.9);
            pad.Text(new(left + 5, y), "measured", Letters.Small, Anchor.MiddleLeft);
        }
    }
}
