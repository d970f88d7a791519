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

    private const double PointMm = 1.2;
    private const double RingMm = 0.9;
    private const double LegendMm = 7;
    private const string Grid = "grid";

    private static readonly Pen Beaten = new(0.25, 0.45);

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

        Numbers(pad, plot, shown.Where(l => best.Contains(l.Number) || l.Number == 0), At);
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

    /// <summary>Beside the points, further off with a line to it where there is no room; a number that finds none is left out, and stands in the list.</summary>
    private static void Numbers(
        SheetCanvas pad,
        Box plot,
        IEnumerable<Layout> named,
        Func<Layout, Vec2> at
    )
    {
        Box[] squares = [.. named.Where(l => l.Number == 0).Select(l => Around(at(l)))];
        foreach (
            IGrouping<(double, double), Layout> place in named.GroupBy(l =>
                (Math.Round(at(l).X, 2), Math.Round(at(l).Y, 2))
            )
        )
        {
            Vec2 point = at(place.First());
            string text = Said([.. place.Select(l => l.Number)]);
            foreach (double far in new[] { 2.2, 4.5, 7, 10 })
            {
                int before = pad.Letterings.Count();
                IEnumerable<Lettering> places = Ways(point, far)
                    .Select(w => new Lettering(
                        Draughting.Layout.Layers.Text,
                        Pen.Thin,
                        w.At,
                        text,
                        Letters.Small,
                        w.Anchor
                    ))
                    .Where(t => !squares.Any(s => Box.Around(Corners(t)).Overlaps(s)));
                if (!pad.TextAtFirst(places, plot.Within(-2)))
                {
                    continue;
                }

                if (far > 3)
                {
                    Vec2 to = pad.Letterings.ElementAt(before).At;
                    pad.Line(point + (1.5 * (to - point).Unit()), to, Pens.Measure);
                }

                break;
            }
        }
    }

    private static Box Around(Vec2 p) => new Box(p.X, p.Y, p.X, p.Y).Within(-PointMm - 0.3);

    private static Vec2[] Corners(Lettering t)
    {
        double wide = Letters.Width(t.Text, t.HeightMm),
            left = t.Anchor switch
            {
                Anchor.MiddleLeft => t.At.X,
                Anchor.MiddleRight => t.At.X - wide,
                _ => t.At.X - (wide / 2),
            };
        return [new(left, t.At.Y - (t.HeightMm / 2)), new(left + wide, t.At.Y + (t.HeightMm / 2))];
    }

    private static IEnumerable<(Vec2 At, Anchor Anchor)> Ways(Vec2 p, double far)
    {
        double slant = far * 0.75;
        yield return (p + new Vec2(far, 0), Anchor.MiddleLeft);
        yield return (p + new Vec2(slant, slant), Anchor.MiddleLeft);
        yield return (p + new Vec2(slant, -slant), Anchor.MiddleLeft);
        yield return (p + new Vec2(0, far), Anchor.MiddleCentre);
        yield return (p + new Vec2(0, -far), Anchor.MiddleCentre);
        yield return (p + new Vec2(-far, 0), Anchor.MiddleRight);
        yield return (p + new Vec2(-slant, slant), Anchor.MiddleRight);
        yield return (p + new Vec2(-slant, -slant), Anchor.MiddleRight);
    }

    /// <summary>3 · 7 · 12; of many the first, and how many more.</summary>
    private static string Said(int[] numbers)
    {
        const int most = 4;
        // No sign among them hangs below the line, where the grid may run.
        string first = string.Join(
            " · ",
            numbers.Take(most).Select(n => n == 0 ? "as it stands" : $"{n}")
        );
        return numbers.Length > most ? $"{first} and {numbers.Length - most} more" : first;
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
            pad.Line(new(at, plot.Top), new(at, plot.Bottom), Pens.Rule, Grid);
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
            pad.Line(new(plot.Right, at), new(plot.Left, at), Pens.Rule, Grid);
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
