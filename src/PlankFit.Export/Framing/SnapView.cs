using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Framing;

/// <summary>
/// A face with its girths laid out straight from the keel's side at every station, the lines to snap on it drawn through their marks, in as many strips as give
/// the largest scale. Forward is to the left.
/// </summary>
internal sealed class SnapView
{
    private const double AboveMm = 13;
    private const double BelowMm = 9;
    private const double AsideMm = 14;

    private readonly SnapFace face;
    private readonly LengthUnit unit;
    private readonly (double From, double To)[] strips;
    private readonly List<SnapLine> lines;

    private SnapView(
        SnapFace face,
        LengthUnit unit,
        (double From, double To)[] strips,
        List<SnapLine> lines,
        Ratio ratio
    )
    {
        (this.face, this.unit, this.strips, this.lines) = (face, unit, strips, lines);
        Ratio = ratio;
    }

    public Ratio Ratio { get; }

    public static SnapView Fitting(BottomPlan plan, SnapFace face)
    {
        Box room = Frame.Inside(SheetFormat.Wall(plan.Job)).Within(6);
        List<SnapLine> lines = SnapLine.Of(plan, face);
        return new[] { 1, 2, 3 }
            .Select(n =>
            {
                (double From, double To)[] strips = Strips(face, n);
                Box largest = new(
                    0,
                    0,
                    strips.Max(s => s.To - s.From),
                    face.Girths.Max(g => g.GirthMm)
                );
                var ratio = Ratio.Fitting(
                    largest,
                    room.Width - (2 * AsideMm),
                    (room.Height / n) - AboveMm - BelowMm,
                    plan.Job.Units
                );
                return new SnapView(face, plan.Job.Units, strips, lines, ratio);
            })
            .MinBy(v => v.Ratio.Of)!;
    }

    public void Draw(SheetCanvas pad, Box inside)
    {
        Box room = inside.Within(6);
        for (int i = 0; i < strips.Length; i++)
        {
            Strip(pad, room.Row(i, strips.Length), strips[i]);
        }

        pad.BreakAroundLetters(Layers.Hull, Layers.Behind);
    }

    /// <summary>Cut at stations, which stand at the end of one strip and at the beginning of the next.</summary>
    private static (double From, double To)[] Strips(SnapFace face, int count)
    {
        double[] x = [.. face.Girths.Select(g => g.XMm)];
        double[] cuts =
        [
            x[0],
            .. Enumerable
                .Range(1, count - 1)
                .Select(i => x.MinBy(a => Math.Abs(a - (x[0] + ((x[^1] - x[0]) * i / count))))),
            x[^1],
        ];
        return [.. cuts.Zip(cuts.Skip(1), (a, b) => (a, b)).Where(s => s.b > s.a)];
    }

    private void Strip(SheetCanvas pad, Box row, (double From, double To) strip)
    {
        double f = Ratio.Factor,
            width = (strip.To - strip.From) * f;
        var at = new Placing(
            f,
            f,
            new Vec2(row.Middle.X - (width / 2) - (strip.From * f), row.Bottom + BelowMm)
        );

        // A little past the ends of the bottom, so that what ends there is seen to.
        double first = strip.From == strips[0].From ? AsideMm / 2 : 0,
            last = strip.To == strips[^1].To ? AsideMm / 2 : 0;
        Box shown = new(
            at[new(strip.From, 0)].X - first,
            row.Bottom,
            at[new(strip.To, 0)].X + last,
            row.Top
        );
        SnapGirth[] here =
        [
            .. face.Girths.Where(g => g.XMm >= strip.From - 1e-6 && g.XMm <= strip.To + 1e-6),
        ];
        pad.Line(at[new(strip.From, 0)], at[new(strip.To, 0)], Pens.HullEdge, Layers.Hull);
        pad.Open(here.Select(g => at[new(g.XMm, g.GirthMm)]), Pens.HullEdge, Layers.Hull);
        foreach (SnapGirth g in here)
        {
            Vec2 foot = at[new(g.XMm, 0)],
                top = at[new(g.XMm, g.GirthMm)];
            pad.Line(foot, top, Pens.Station, Layers.Hull);
            pad.Text(
                foot - new Vec2(0, 4.5),
                g.Station,
                Letters.Heading,
                Anchor.MiddleCentre,
                true
            );
            // To the left where the chine rises aft, so that it does not run through the figure.
            bool rises =
                g != here[^1] && here[Array.IndexOf(here, g) + 1].GirthMm > 1.04 * g.GirthMm;
            pad.TextAtFirst(
                from up in new[] { 1.6, 5.0 }
                select new Lettering(
                    Layers.Text,
                    Pen.Thin,
                    top + new Vec2(rises ? 0.8 : 0, up),
                    LengthText.PaperNumber(g.GirthMm, unit),
                    Letters.Bench,
                    rises ? Anchor.BaselineRight : Anchor.BaselineCentre
                ),
                row.Within(-4)
            );
        }

        double[] uprights =
        [
            .. here.Select(g => at[new(g.XMm, 0)].X),
            .. lines.Where(l => !l.Figured).Select(l => at[l.Points[0]].X),
        ];
        var on = new SnapPaper(
            pad,
            at,
            shown,
            strip,
            [.. at.Of(here.Select(g => new Vec2(g.XMm, g.GirthMm)))],
            uprights,
            row with
            {
                Left = row.Left - 4,
                Right = row.Right + 4,
                Top = row.Top + 4,
            }
        );
        foreach (SnapLine line in lines)
        {
            line.Dots(on);
        }

        foreach (SnapLine line in lines)
        {
            line.Draw(on, unit);
        }
    }
}

/// <summary>One strip of the view as it lies on the sheet.</summary>
/// <param name="Chine">On paper.</param>
/// <param name="Uprights">Where stations and things across the hull stand, on paper.</param>
/// <param name="Room">What words may not leave.</param>
internal sealed record SnapPaper(
    SheetCanvas Pad,
    Placing At,
    Box Shown,
    (double From, double To) Strip,
    Vec2[] Chine,
    double[] Uprights,
    Box Room
)
{
    /// <summary>Words at the first of some places that is free; small ones where no place holds them in the usual letters.</summary>
    public void Say(IEnumerable<Vec2> places, string words, Anchor anchor) =>
        Pad.TextAtFirst(
            from size in new[] { Letters.Bench, Letters.Small }
            from at in places
            select new Lettering(Layers.Text, Pen.Thin, at, words, size, anchor),
            Room
        );

    public bool Holds(double x) => x >= Strip.From - 1 && x <= Strip.To + 1;

    /// <summary>Whether there is no room for a word between a place and the chine above it.</summary>
    public bool IsUnderChine(Vec2 paper) =>
        Segments.YAt(Chine, Math.Clamp(paper.X, Chine[0].X, Chine[^1].X)) is { } y
        && y - paper.Y < 6;
}
