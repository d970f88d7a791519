using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Comparing;

/// <summary>
/// Lay-outs as points, one figure along and one up, the better ones nearer the lower left corner: a full point with its number is a lay-out that nothing beats, a ring one that
/// another beats, a square the job as it stands. What lies at one place has its numbers side by side. Each point is a layer of its own, so that who shows the chart
/// can find it again.
/// </summary>
public static class CompareChart
{
    public const double WidthMm = 180;
    public const double HeightMm = 110;

    /// <summary>Half of what a full point or a square is wide.</summary>
    internal const double PointMm = 1.2;
    private const double RingMm = 0.9;
    private const double LegendMm = 7;
    internal const string Grid = "grid";

    private static readonly Pen Beaten = new(0.25, 0.45);

    /// <summary>Paler than any point, so that a number beside a line is read before it.</summary>
    private static readonly Pen GridPen = new(0.18, 0.7);

    /// <summary>The layer that has the point of that lay-out.</summary>
    public static string LayerOf(int number) =>
        string.Create(CultureInfo.InvariantCulture, $"layout-{number}");

    public static Drawing Of(Comparison comparison)
    {
        SheetCanvas pad = new();
        Draw(pad, new Box(0, 0, WidthMm, HeightMm).Within(3), comparison);
        return pad.Done(
            PlanWords.Headed(comparison.Job) + ": lay-outs side by side",
            WidthMm,
            HeightMm
        );
    }

    internal static void Draw(SheetCanvas pad, Box box, Comparison comparison)
    {
        Layout[] laid = [.. comparison.Laid];
        (Measure along, Measure up) = comparison.Axes;
        LengthUnit unit = comparison.Job.Units;
        Layout[] shown =
        [
            .. laid.Where(l => along.Of(l.Figures!) is not null && up.Of(l.Figures!) is not null),
        ];
        Box plot = new(box.Left + 17, box.Bottom + 10, box.Right - 3, box.Top - LegendMm - 2);
        if (shown.Length == 0)
        {
            pad.Text(plot.Left, plot.Top, "Nothing could be laid.", Letters.Bench);
            return;
        }

        double In(Measure m, Layout l) => m.Of(l.Figures!)!.Value / m.OnAxis(unit).Worth;
        FigureScale x = FigureScale.Of([.. shown.Select(l => In(along, l))], along, unit),
            y = FigureScale.Of([.. shown.Select(l => In(up, l))], up, unit);
        Vec2 At(Layout l) =>
            new(
                plot.Left + (x.Part(In(along, l)) * plot.Width),
                plot.Bottom + (y.Part(In(up, l)) * plot.Height)
            );
        Scales(pad, plot, (along, x), (up, y), unit);
        Legend(pad, box);
        ImmutableHashSet<int> best = comparison.Unbeaten;
        foreach (Layout l in shown.OrderBy(l => best.Contains(l.Number)))
        {
            pad.Add([Point(l, At(l), best.Contains(l.Number))]);
        }

        CompareNumbers.Draw(
            pad,
            plot,
            [.. shown.Where(l => best.Contains(l.Number) || l.Number == 0)],
            At
        );
        pad.BreakAroundLetters(Grid);
    }

    private static Shape Point(Layout l, Vec2 at, bool unbeaten)
    {
        string layer = LayerOf(l.Number);
        double? fill = unbeaten ? 0 : 1;
        Pen pen = unbeaten ? Pens.Seam : Beaten;
        return l.Number == 0
            ? new Polyline(
                layer,
                Pens.Seam,
                [
                    at + new Vec2(-PointMm, -PointMm),
                    at + new Vec2(PointMm, -PointMm),
                    at + new Vec2(PointMm, PointMm),
                    at + new Vec2(-PointMm, PointMm),
                ],
                true,
                fill
            )
            : new CircleShape(layer, pen, at, unbeaten ? PointMm : RingMm, fill);
    }

    private static void Scales(
        SheetCanvas pad,
        Box plot,
        (Measure Of, FigureScale Scale) x,
        (Measure Of, FigureScale Scale) y,
        LengthUnit unit
    )
    {
        foreach (double v in x.Scale.Levels())
        {
            double at = plot.Left + (x.Scale.Part(v) * plot.Width);
            pad.Line(new(at, plot.Top), new(at, plot.Bottom), GridPen, Grid);
            pad.Text(
                new(at, plot.Bottom - 3.4),
                NumberText.Trimmed(v, 4),
                Letters.Small,
                Anchor.BaselineCentre
            );
        }

        foreach (double v in y.Scale.Levels())
        {
            double at = plot.Bottom + (y.Scale.Part(v) * plot.Height);
            pad.Line(new(plot.Right, at), new(plot.Left, at), GridPen, Grid);
            pad.Text(
                new(plot.Left - 1.5, at),
                NumberText.Trimmed(v, 4),
                Letters.Small,
                Anchor.MiddleRight
            );
        }

        pad.Text(
            new(plot.Right, plot.Bottom - 8.5),
            Named(x.Of, unit) + " →",
            Letters.Bench,
            Anchor.BaselineRight
        );
        pad.Text(
            new(plot.Left - 12.5, plot.Top),
            Named(y.Of, unit) + " →",
            Letters.Bench,
            Anchor.BaselineRight,
            turn: 90
        );
    }

    private static string Named(Measure m, LengthUnit unit) =>
        m.OnAxis(unit).Name is { Length: > 0 } name ? $"{m.Head}, {name}" : m.Head;

    private static void Legend(SheetCanvas pad, Box box)
    {
        double left = box.Left,
            y = box.Top - 2;
        foreach (
            (string text, Shape mark) in new (string, Shape)[]
            {
                (
                    "nothing beats it, with its number",
                    new CircleShape(
                        Draughting.Layout.Layers.Marks,
                        Pens.Seam,
                        new(left + 1.5, y),
                        PointMm,
                        0
                    )
                ),
                (
                    "another beats it",
                    new CircleShape(
                        Draughting.Layout.Layers.Marks,
                        Beaten,
                        new(left + 1.5, y),
                        RingMm,
                        1
                    )
                ),
                (
                    "the job as it stands, black where nothing beats it",
                    new Polyline(
                        Draughting.Layout.Layers.Marks,
                        Pens.Seam,
                        [
                            new(left + 0.3, y - PointMm),
                            new(left + 2.7, y - PointMm),
                            new(left + 2.7, y + PointMm),
                            new(left + 0.3, y + PointMm),
                        ],
                        true
                    )
                ),
            }
        )
        {
            pad.Add([mark.MovedBy(new(left - box.Left, 0))]);
            pad.Text(new(left + 4, y), text, Letters.Small, Anchor.MiddleLeft);
            left += 9 + Letters.Width(text, Letters.Small);
        }
    }
}
