using PlankFit.Export.Sheets;
using PlankFit.Export.Views;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Taping;

/// <summary>Where to tape, numbered, on both sides as they stand upside down in the shop: to carry to the hull.</summary>
internal static class TapingView
{
    private const double HeadMm = 9;
    private const double NamesMm = 8;
    private const double BlobMm = 2.4;
    private static readonly double[] Places = [0.5, 0.38, 0.62, 0.26, 0.74, 0.15, 0.85];
    private static readonly Pen Tape = new(0.7);

    public static SheetPage Page(BottomPlan plan, TapeAdvice advice)
    {
        var format = SheetFormat.Bench(plan.Job);
        Box inside = Frame.Inside(format).Within(3);
        Vec3 slope = Slope(plan);
        var ratio = Ratio.Fitting(
            Box.Around(
                Edges(plan, Side.Starboard).SelectMany(e => e).Select(p => Seen(slope, 1, p))
            ),
            inside.Width - 2,
            (inside.Height / 2) - HeadMm - NamesMm - 4,
            plan.Job.Units
        );
        return new(
            format,
            new(
                "Tape here first",
                "both sides as they stand upside down, keel on top, seen from outboard",
                "scale " + ratio,
                null,
                Cautions.CheckOf(plan.Job.Hull.Panel)
            )
            {
                Arrow = "forward: the arrow at each side",
            },
            (pad, _) =>
            {
                foreach (Side side in new[] { Side.Starboard, Side.Port })
                {
                    Strip(
                        pad,
                        inside.Row(side == Side.Starboard ? 0 : 1, 2),
                        plan,
                        side,
                        (slope, ratio),
                        [.. TapedWords.Numbered(advice).Select(n => (n.Name, n.Wish))]
                    );
                }
            }
        );
    }

    private static Vec2 Seen(Vec3 slope, int turn, Vec3 p) =>
        new(turn * p.X, -((slope.Y * Math.Abs(p.Y)) + (slope.Z * p.Z)));

    private static void Strip(
        SheetCanvas pad,
        Box row,
        BottomPlan plan,
        Side side,
        (Vec3 Slope, Ratio Ratio) view,
        IEnumerable<(string Name, TapeWish Wish)> wishes
    )
    {
        int turn = side == Side.Starboard ? 1 : -1;
        Vec2 Flat(Vec3 p) => Seen(view.Slope, turn, p);
        Vec3[][] edges = Edges(plan, side);
        var at = Placing.Centred(
            Box.Around(edges.SelectMany(e => e).Select(Flat)),
            row with
            {
                Top = row.Top - HeadMm - NamesMm,
                Bottom = row.Bottom + 3,
            },
            view.Ratio.Factor,
            view.Ratio.Factor
        );
        pad.Text(
            row.Left,
            row.Top - Letters.Heading,
            $"{PlankWords.Of(side).ToUpperInvariant()}: forward is to your {(turn > 0 ? "left" : "right")}",
            Letters.Heading,
            bold: true
        );
        ForwardArrow.Draw(
            pad,
            new(row.Left + 92, row.Top - (Letters.Heading / 2)),
            new(-turn, 0),
            14
        );
        foreach (Vec3[] edge in edges)
        {
            pad.Open(at.Of(edge.Select(Flat)), Pens.HullEdge, Layers.Hull);
        }

        HullSurface hull = plan.HullOf(side);
        List<(string, double X)> names = [];
        foreach (StationOnHull station in hull.Stations)
        {
            Vec2[] section =
            [
                .. Enumerable
                    .Range(0, 9)
                    .Select(k =>
                        at[
                            Flat(
                                hull.Surface.At(station.U, hull.Surface.UpperV(station.U) * k / 8).P
                            )
                        ]
                    ),
            ];
            pad.Open(section, Pens.Station);
            names.Add((station.Name, section[0].X));
        }

        StationNames.Row(pad, [.. names], row.Top - HeadMm - 3);
        (string Name, Vec2[] Line)[] lines =
        [
            .. wishes
                .Where(w => w.Wish.Place.Side is null || w.Wish.Place.Side == side)
                .Select(w =>
                    (w.Name, Line(plan, hull, w.Wish.Place).Select(p => at[Flat(p)]).ToArray())
                )
                .Where(l => l.Item2.Length > 0),
        ];
        foreach ((_, Vec2[] line) in lines)
        {
            if (line.Length == 1)
            {
                pad.Dot(line[0], 1.1);
            }
            else
            {
                pad.Open(line, Tape);
            }
        }

        // Names stand on their lines, and so above them all.
        List<Vec2> taken = [];
        foreach ((string name, Vec2[] line) in lines)
        {
            pad.SpeakOf(
                wishes.First(w => w.Name == name) is var (_, wish)
                    ? TapedWords.About(plan.Job, wish.Place)
                    : ""
            );
            Named(pad, line, name, taken);
        }

        pad.SpeakOf("");
    }

    private static void Named(SheetCanvas pad, Vec2[] line, string name, List<Vec2> taken)
    {
        Vec2[] candidates =
            line.Length == 1
                ?
                [
                    .. new[]
                    {
                        (0, 4.0),
                        (4, 4),
                        (-4, 4),
                        (0, -4),
                        (5, -4),
                        (-5, -4),
                        (8, 0),
                        (-8, 0),
                    }.Select(d => line[0] + new Vec2(d.Item1, d.Item2)),
                ]
                : [.. Places.Select(t => Along(line, t))];
        Vec2 blob = candidates
            .Select(c => (At: c, Room: taken.Select(t => (t - c).Norm).DefaultIfEmpty(99).Min()))
            .OrderByDescending(c => Math.Min(c.Room, (2 * BlobMm) + 0.6))
            .First()
            .At;
        taken.Add(blob);
        pad.Closed(
            Enumerable
                .Range(0, 24)
                .Select(k =>
                    blob
                    + new Vec2(
                        BlobMm * Math.Cos(k * Math.PI / 12),
                        BlobMm * Math.Sin(k * Math.PI / 12)
                    )
                ),
            Pens.Seam,
            fill: 1
        );
        pad.Text(blob, name, Letters.Bench, Anchor.MiddleCentre, true);
    }

    private static Vec2 Along(Vec2[] line, double part)
    {
        double whole = line.Zip(line.Skip(1), (a, b) => (b - a).Norm).Sum(),
            left = part * whole;
        for (int i = 1; i < line.Length; i++)
        {
            double chord = (line[i] - line[i - 1]).Norm;
            if (left <= chord && chord > 0)
            {
                return line[i - 1] + (left / chord * (line[i] - line[i - 1]));
            }

            left -= chord;
        }

        return line[^1];
    }

    /// <summary>Where the tape lies, in space, starboard frame.</summary>
    private static IEnumerable<Vec3> Line(BottomPlan plan, HullSurface hull, TapePlace place)
    {
        if (place.Edge is { } edge)
        {
            PlankEdge? of = plan.Find(edge.Plank) is { } plank
                ? edge.After
                    ? plank.OnHull.AfterEdge
                    : plank.OnHull.ForwardEdge
                : null;
            return of?.Seam ?? [];
        }

        LoftedSurface surface = hull.Surface;
        double U(TapedPoint p) => hull.Stations.First(s => s.Name == p.Station).U;
        Vec3 At(TapedPoint p) =>
            surface.At(U(p), p.Line == plan.Job.Hull.Panel.Lower ? 0 : surface.UpperV(U(p))).P;
        switch (place.Kind)
        {
            case TapeKind.Girth:
                double u = U(place.Points[0]);
                return Enumerable
                    .Range(0, 13)
                    .Select(k => surface.At(u, surface.UpperV(u) * k / 12).P);
            case TapeKind.AlongKeel or TapeKind.AlongChine:
                (double from, double to) = (U(place.Points[0]), U(place.Points[1]));
                return Enumerable
                    .Range(0, 17)
                    .Select(k => from + ((to - from) * k / 16))
                    .Select(w =>
                        surface.At(w, place.Kind == TapeKind.AlongKeel ? 0 : surface.UpperV(w)).P
                    );
            default:
                return place.Points.Select(At);
        }
    }

    /// <summary>Keel and chine and both ends.</summary>
    private static Vec3[][] Edges(BottomPlan plan, Side side)
    {
        LoftedSurface s = plan.HullOf(side).Surface;
        Vec3[] Curve(Func<double, double> v) =>
            [
                .. Enumerable
                    .Range(0, 81)
                    .Select(k => s.UFrom + ((s.UTo - s.UFrom) * k / 80))
                    .Select(u => s.At(u, v(u)).P),
            ];
        Vec3[] End(double u) =>
            [.. Enumerable.Range(0, 9).Select(k => s.At(u, s.UpperV(u) * k / 8).P)];
        return [Curve(_ => 0), Curve(s.UpperV), End(s.UFrom), End(s.UTo)];
    }

    /// <summary>Unit direction from keel to chine, athwartships, the mean over the hull.</summary>
    private static Vec3 Slope(BottomPlan plan)
    {
        Vec3[][] edges = Edges(plan, Side.Starboard);
        Vec3 sum = Vec3.Zero;
        for (int i = 0; i < edges[0].Length; i++)
        {
            sum += edges[1][i] - edges[0][i];
        }

        return new Vec3(0, sum.Y, Math.Max(0, sum.Z)).Unit();
    }
}
