using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Lines;

/// <summary>The lines of the table on one wall sheet: profile, half-breadth plan and body plan, all to one scale, forward to the left.</summary>
public static class LinesPlan
{
    private const double Gap = 12;
    private const double NamesMm = 30;

    public static Drawing Of(Job job)
    {
        var format = SheetFormat.Wall(job);
        ImmutableArray<DrawnLine> lines =
        [
            .. job.Offsets.Lines.Select(l => DrawnLine.Of(job.Offsets, l)).OfType<DrawnLine>(),
        ];
        Box inside = Frame.Inside(format).Within(10);
        if (lines.IsEmpty)
        {
            return SheetPage.Numbered(job, [new(format, Block("no line to draw"), (_, _) => { })])[
                0
            ];
        }

        var profile = Box.Around(lines.SelectMany(l => l.Curve).Select(Profile));
        var plan = Box.Around(
            lines.SelectMany(l => l.Curve).Select(Plan).Append(new Vec2(profile.Left, 0))
        );
        double most = lines.SelectMany(l => l.Curve).Max(p => p.Y);
        Box body = new(-most, profile.Bottom, most, profile.Top);
        // The long views take the sheet's width; the body plan, which is small beside them, has a scale of its own below.
        var along = Ratio.Fitting(
            new(0, 0, profile.Width, 1.6 * (profile.Height + plan.Height)),
            inside.Width - NamesMm,
            inside.Height,
            job.Units
        );
        double left = inside.Height - ((profile.Height + plan.Height) * along.Factor) - (6 * Gap);
        var ends = Ratio.Fitting(body, inside.Width - 110, left, job.Units);
        string scales = $"{along}, body plan {ends}";
        return SheetPage.Numbered(
            job,
            [
                new(
                    format,
                    Block(scales),
                    (pad, _) =>
                        Draw(
                            pad,
                            job,
                            lines,
                            inside,
                            new(profile, plan, along.Factor, body, ends.Factor)
                        )
                ),
            ]
        )[0];
    }

    /// <summary>What each view shows, mm of the boat, and its scale: profile and half-breadth plan share one.</summary>
    private sealed record Views(Box Profile, Box Plan, double Along, Box Body, double Across);

    private static TitleBlock Block(string scale) =>
        new(
            "Lines of the table of offsets",
            "starboard; as given, nothing faired",
            "scale " + scale,
            new Vec2(-1, 0),
            Cautions.Overview
        );

    private static Vec2 Profile(Vec3 p) => new(p.X, p.Z);

    private static Vec2 Plan(Vec3 p) => new(p.X, -p.Y);

    private static void Draw(
        SheetCanvas pad,
        Job job,
        ImmutableArray<DrawnLine> lines,
        Box inside,
        Views views
    )
    {
        (Box profile, Box plan, double k, Box body, double kBody) = views;
        double left = inside.Left,
            top = inside.Top - Gap;
        var atProfile = new Placing(
            k,
            k,
            new Vec2(left - (k * profile.Left), top - (k * profile.Top))
        );
        double planTop = top - (k * profile.Height) - (2 * Gap);
        var atPlan = new Placing(k, k, new Vec2(left - (k * plan.Left), planTop - (k * plan.Top)));
        double bodyTop = planTop - (k * plan.Height) - (2 * Gap);
        var atBody = new Placing(
            kBody,
            kBody,
            new Vec2(inside.Middle.X, bodyTop - (kBody * body.Top))
        );

        pad.Text(left, top + 6, "Profile", Letters.Heading, bold: true);
        pad.Text(left, planTop + 6, "Half-breadth plan", Letters.Heading, bold: true);
        pad.Text(left, bodyTop, "Body plan", Letters.Heading, bold: true);
        pad.Text(left, bodyTop - 6, "forward half to the right,", Letters.Small);
        pad.Text(left, bodyTop - 10, "after half to the left", Letters.Small);
        Stations(pad, job.Offsets, atProfile, profile);
        Stations(pad, job.Offsets, atPlan, plan);
        pad.Line(atPlan[new(plan.Left, 0)], atPlan[new(plan.Right, 0)], Pens.Rule);
        foreach (DrawnLine line in lines)
        {
            pad.Open(atProfile.Of(line.Curve.Select(Profile)), Pens.Seam, Layers.Hull);
            pad.Open(atPlan.Of(line.Curve.Select(Plan)), Pens.Seam, Layers.Hull);
            foreach (Vec3 p in line.Given)
            {
                pad.Dot(atProfile[Profile(p)], 0.5);
                pad.Dot(atPlan[Plan(p)], 0.5);
            }
        }

        Names(pad, lines, p => atProfile[Profile(p)]);
        Names(pad, lines, p => atPlan[Plan(p)]);
        Body(pad, job, lines, atBody, body);
    }

    /// <summary>Each line named past its after end, moved apart where two ends are near.</summary>
    private static void Names(SheetCanvas pad, ImmutableArray<DrawnLine> lines, Func<Vec3, Vec2> at)
    {
        double last = double.PositiveInfinity;
        foreach (DrawnLine line in lines.OrderByDescending(l => at(l.Curve[^1]).Y))
        {
            Vec2 end = at(line.Curve[^1]);
            double y = Math.Min(end.Y, last - (Letters.Small * Letters.Leading));
            pad.Text(new Vec2(end.X + 2, y), line.Name, Letters.Small, Anchor.MiddleLeft);
            last = y;
        }
    }

    private static void Stations(SheetCanvas pad, OffsetTable table, Placing at, Box box)
    {
        double lastX = double.NegativeInfinity;
        foreach (Station s in table.Stations)
        {
            Vec2 foot = at[new(s.PositionMm, box.Bottom)],
                head = at[new(s.PositionMm, box.Top)];
            pad.Line(foot - new Vec2(0, 2), head + new Vec2(0, 2), Pens.Station);
            if (foot.X - lastX > Letters.Width(s.Name, Letters.Small) + 1)
            {
                pad.SpeakOf(PlaceAlong.Of(s.PositionMm, $"station {s.Name}"));
                pad.Text(foot - new Vec2(0, 5), s.Name, Letters.Small, Anchor.BaselineCentre);
                pad.SpeakOf("");
                lastX = foot.X;
            }
        }
    }

    private static void Body(
        SheetCanvas pad,
        Job job,
        ImmutableArray<DrawnLine> lines,
        Placing at,
        Box body
    )
    {
        pad.Line(at[new(0, body.Bottom)], at[new(0, body.Top)], Pens.Station);
        string[] order = [.. job.Hull.Panel.Lines];
        OffsetTable table = job.Offsets;
        int middle = table.Stations.Length / 2;
        var named = new Vec2(double.NegativeInfinity, 0);
        for (int i = 0; i < table.Stations.Length; i++)
        {
            int side = i <= middle ? 1 : -1;
            Vec2[] Drawn(IEnumerable<string> names)
            {
                Vec2[] drawn =
                [
                    .. Section(table, [.. names], i).Select(p => at[new(side * p.X, p.Y)]),
                ];
                pad.Open(drawn, Pens.Seam, Layers.Hull);
                return drawn;
            }

            Vec2[] section = Drawn(order);
            foreach (PlankingJob panel in job.Panels)
            {
                // The name stands at the upper end of all.
                section = Drawn(panel.Hull.Panel.Lines) is { Length: > 0 } more ? more : section;
            }

            if (section.Length > 1 && section[^1].ChordTo(named) > 3 * Letters.Small)
            {
                named = section[^1];
                pad.SpeakOf(
                    PlaceAlong.Of(table.Stations[i].PositionMm, $"station {table.Stations[i].Name}")
                );
                pad.Text(
                    section[^1] + new Vec2(side * 1.2, 0.6),
                    table.Stations[i].Name,
                    Letters.Small,
                    side > 0 ? Anchor.BaselineLeft : Anchor.BaselineRight
                );
                pad.SpeakOf("");
            }
        }

        foreach (DrawnLine line in lines)
        {
            pad.Open(at.Of(line.Curve.Select(p => new Vec2(p.Y, p.Z))), Pens.Rule, Layers.Hull);
            pad.Open(at.Of(line.Curve.Select(p => new Vec2(-p.Y, p.Z))), Pens.Rule, Layers.Hull);
        }
    }

    /// <summary>The section as it is lofted: straight, or the polynomial through its points; half-breadth and height.</summary>
    private static IEnumerable<Vec2> Section(OffsetTable table, string[] order, int station)
    {
        Vec3[] given =
        [
            .. order
                .Select(table.Find)
                .OfType<OffsetLine>()
                .Where(l => l.Has(station))
                .Select(l => new Vec3(
                    0,
                    l.HalfBreadthsMm[station]!.Value,
                    l.HeightsMm[station]!.Value
                )),
        ];
        if (given.Length < 2 || given[0].ChordTo(given[^1]) < 1e-6)
        {
            return [];
        }

        Vec3[] powers = SectionPolynomial.Through(given);
        int steps = given.Length == 2 ? 1 : 24;
        return Enumerable
            .Range(0, steps + 1)
            .Select(k =>
            {
                double v = (double)k / steps;
                Vec3 p = Vec3.Zero;
                for (int power = powers.Length - 1; power >= 0; power--)
                {
                    p = (v * p) + powers[power];
                }

                return new Vec2(p.Y, p.Z);
            });
    }
}
