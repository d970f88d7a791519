using PlankFit.Geometry.Primitives;

namespace PlankFit.Export.Comparing;

/// <summary>
/// The numbers of lay-outs beside their points on the chart: clear of every point, square, number and line of the grid; further off with a line to it where there is no
/// room, which runs through none of these either. A number that finds no place is left out, and stands in the list.
/// </summary>
internal static class CompareNumbers
{
    /// <summary>Nearer than this a number reads as struck by a line or joined to a point, mm.</summary>
    private const double ClearMm = 0.6;

    /// <summary>A line to a number ends so far from it, mm.</summary>
    private const double BeforeMm = 0.4;

    /// <summary>From a point to its number; where the grid is in the way it may be crossed, but only beside the point.</summary>
    private static readonly (double Far, bool OnGrid)[] Tries =
    [
        (2.2, false),
        (3, false),
        (2.2, true),
        (4.5, false),
        (7, false),
        (10, false),
        (13, false),
    ];

    public static void Draw(SheetCanvas pad, Box plot, Layout[] named, Func<Layout, Vec2> at)
    {
        Box[] points =
        [
            .. pad.Shapes.OfType<CircleShape>().Select(c => Around(c.Centre, c.RadiusMm)),
            .. named.Where(l => l.Number == 0).Select(l => Around(at(l), CompareChart.PointMm)),
        ];
        (Vec2 From, Vec2 To)[] grid =
        [
            .. pad
                .Shapes.OfType<Polyline>()
                .Where(l => l.Layer == CompareChart.Grid)
                .Select(l => (l.Points[0], l.Points[^1])),
        ];
        List<(Vec2 From, Vec2 To)> leaders = [];
        foreach (
            IGrouping<(double, double), Layout> place in named.GroupBy(l =>
                (Math.Round(at(l).X, 2), Math.Round(at(l).Y, 2))
            )
        )
        {
            Vec2 point = at(place.First());
            string text = Said([.. place.Select(l => l.Number)]);
            foreach ((double far, bool onGrid) in Tries)
            {
                bool isLed = far > 3;
                IEnumerable<Lettering> places = Ways(point, far)
                    .Select(w => new Lettering(
                        Draughting.Layout.Layers.Text,
                        Pen.Thin,
                        w.At,
                        text,
                        Letters.Small,
                        w.Anchor
                    ))
                    .Where(t =>
                    {
                        Box box = Segments.Around(t).Within(-ClearMm);
                        return !points.Any(box.Overlaps)
                            && !leaders.Any(l => Meets(l, box))
                            && (onGrid || !grid.Any(g => Meets(g, box)))
                            && (!isLed || IsClear(pad, Leader(point, t), points, leaders));
                    });
                int before = pad.Letterings.Count();
                if (!pad.TextAtFirst(places, plot.Within(-2)))
                {
                    continue;
                }

                if (isLed)
                {
                    (Vec2 From, Vec2 To) leader = Leader(point, pad.Letterings.ElementAt(before));
                    leaders.Add(leader);
                    pad.Line(leader.From, leader.To, Pens.Measure);
                }

                break;
            }
        }
    }

    private static Box Around(Vec2 p, double mm) => new Box(p.X, p.Y, p.X, p.Y).Within(-mm);

    private static bool Meets((Vec2 From, Vec2 To) line, Box box) =>
        Segments.Clip(line.From, line.To, box) is not null;

    private static bool IsClear(
        SheetCanvas pad,
        (Vec2 From, Vec2 To) leader,
        Box[] points,
        List<(Vec2 From, Vec2 To)> leaders
    ) =>
        !points.Any(b => Meets(leader, b))
        && !pad.Letterings.Any(t => Meets(leader, Segments.Around(t).Within(-ClearMm)))
        && !leaders.Any(l => Segments.Meet(l.From, l.To, leader.From, leader.To));

    /// <summary>From clear of the point to just before the number.</summary>
    private static (Vec2 From, Vec2 To) Leader(Vec2 point, Lettering number)
    {
        Vec2 from =
            point + (((CompareChart.PointMm * Math.Sqrt(2)) + 0.1) * (number.At - point).Unit());
        return (
            from,
            Segments.Clip(from, number.At, Segments.Around(number).Within(-BeforeMm))?.From
                ?? number.At
        );
    }

    private static IEnumerable<(Vec2 At, Anchor Anchor)> Ways(Vec2 p, double far)
    {
        double slant = far * 0.9;
        yield return (p + new Vec2(far, 0), Anchor.MiddleLeft);
        yield return (p + new Vec2(slant, slant), Anchor.MiddleLeft);
        yield return (p + new Vec2(slant, -slant), Anchor.MiddleLeft);
        yield return (p + new Vec2(0, far + 1.1), Anchor.MiddleCentre);
        yield return (p + new Vec2(0, -far - 0.6), Anchor.MiddleCentre);
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
}
