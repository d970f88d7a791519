using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Export.Sheets;

/// <summary>One line of a chart, and the places on it that were measured.</summary>
internal sealed record ChartLine(string Name, Pen Pen, ImmutableArray<Vec2> Points)
{
    public ImmutableArray<Vec2> Dots { get; init; } = [];
}

/// <summary>A chart over named places along one axis, with a zero line, levels and a legend.</summary>
/// <param name="Places">Where the upright lines stand and what they are called.</param>
/// <param name="Level">How a value is written beside its level.</param>
internal sealed record LineChart(
    string Title,
    ImmutableArray<ChartLine> Lines,
    ImmutableArray<(double At, string Name)> Places,
    Func<double, string> Level
)
{
    private const double ScaleColumnMm = 18;
    private const int Levels = 6;

    public void Draw(Pad pad, Box box)
    {
        IEnumerable<Vec2> all = Lines.SelectMany(l => l.Points.Concat(l.Dots));
        double low = Math.Min(0, all.Min(p => p.Y)),
            high = Math.Max(0, all.Max(p => p.Y)),
            from = Places.Min(p => p.At),
            to = Places.Max(p => p.At);
        double room = Math.Max(0.1 * (high - low), 0.5);
        (low, high) = (low < 0 ? low - room : low, high + room);
        Box plot = new(box.Left + ScaleColumnMm, box.Bottom + 8, box.Right - 4, box.Top - 14);
        Vec2 At(Vec2 p) =>
            new(
                plot.Left + ((p.X - from) / Math.Max(to - from, 1e-9) * plot.Width),
                plot.Bottom + ((p.Y - low) / (high - low) * plot.Height)
            );
        pad.Text(box.Left, box.Top - Letters.Bench, Title, Letters.Bench, bold: true);
        Legend(pad, box);
        for (int i = 0; i <= Levels; i++)
        {
            double v = low + ((high - low) * i / Levels),
                y = At(new(from, v)).Y;
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

    private void Legend(Pad pad, Box box)
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
