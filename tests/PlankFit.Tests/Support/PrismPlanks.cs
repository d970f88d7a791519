using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;

namespace PlankFit.Tests.Support;

/// <summary>
/// The planks of one layer of a prism, starboard. In the layer's plane, x aft and a along the slant: a plank runs along (h cos θ, sin θ), h = 1
/// heading aft and -1 forward; seen from outside, n = (sin θ, -h cos θ), which points aft. Seams are lines of constant n, a width apart.
/// </summary>
internal sealed class PrismPlanks(Prism prism, int layer, PlankLayerSpec spec, double offsetMm)
{
    private readonly double heading = spec.Heads == Heads.Aft ? 1 : -1;
    private readonly double cos = Math.Cos(spec.AngleDegrees * Math.PI / 180);
    private readonly double sin = Math.Sin(spec.AngleDegrees * Math.PI / 180);
    private readonly double half = spec.WidthMm / 2;

    public ImmutableArray<Plank> All()
    {
        double middle =
                ((prism.KeelHalfBreadthMm + prism.HalfBeamMm) / 2) / Math.Cos(prism.Deadrise),
            master = Across(prism.MasterMm, middle);
        double[] corners = [.. Corners(0).Select(c => Across(c.X, c.Y))];
        int forward = (int)Math.Ceiling((corners.Min() - master - half) / spec.WidthMm),
            after = (int)Math.Floor((corners.Max() - master + half) / spec.WidthMm);
        // A seam that only touches a corner makes no plank.
        forward += master + (forward * spec.WidthMm) + half - corners.Min() < 1e-6 ? 1 : 0;
        after -= corners.Max() - (master + (after * spec.WidthMm) - half) < 1e-6 ? 1 : 0;
        int count = after - forward + 1;
        return
        [
            .. Enumerable
                .Range(1, count)
                .Select(number =>
                    One(
                        number,
                        count,
                        master + ((forward + number - 1) * spec.WidthMm),
                        number == 1 - forward
                    )
                ),
        ];
    }

    /// <summary>n counted across the whole layer.</summary>
    private double Across(double x, double a) => (x * sin) - (heading * a * cos);

    /// <summary>The region's corners (x, a), each with the edge that begins there, counter-clockwise seen from outside; the keel moved outboard by so much.</summary>
    private (double X, double Y, Stretch On)[] Corners(double keelMovedMm)
    {
        double keel = prism.KeelMm(offsetMm) + keelMovedMm;
        return
        [
            (0, keel, Stretch.Stem),
            (0, prism.ChineMm, Stretch.Chine),
            (prism.LengthMm, prism.ChineMm, Stretch.Transom),
            (prism.LengthMm, keel, Stretch.Keel),
        ];
    }

    private Plank One(int number, int count, double ownLine, bool isMaster)
    {
        // s is counted from where the own line meets the keel, extended off the bottom if need be.
        double keelA = prism.KeelMm(offsetMm),
            keelX = (ownLine + (heading * keelA * cos)) / sin,
            origin = (keelX * heading * cos) + (keelA * sin);
        Vec2 Flat(double x, double a) =>
            new((x * heading * cos) + (a * sin) - origin, Across(x, a) - ownLine);
        Vec3 Space(Vec2 p)
        {
            double s = p.X + origin,
                n = p.Y + ownLine;
            return prism.Point(
                (s * heading * cos) + (n * sin),
                (s * sin) - (n * heading * cos),
                offsetMm
            );
        }

        LabelledPolygon Face(double keelMovedMm) =>
            new LabelledPolygon([.. Corners(keelMovedMm).Select(c => (Flat(c.X, c.Y), c.On))])
                .Clip(new(0, -1), half, Stretch.ForwardSeam)
                .Clip(new(0, 1), half, Stretch.AfterSeam);

        double shift = spec.ThicknessMm / 2 * Math.Tan(prism.Deadrise);
        LabelledPolygon net = Face(0),
            outer = Face(-shift),
            inner = Face(shift),
            listed = net.FromLeastN().Divided(prism.MaxChordMm);
        PrismEnds ends = new(prism, spec, net, outer, inner, Space);
        ImmutableArray<PlankEnd> all = ends.All();
        LabelledPolygon cut = ends.Cut(all, half).FromLeastN();
        PlankEdge forward = Edge(Stretch.ForwardSeam, number > 1 ? number - 1 : null),
            after = Edge(Stretch.AfterSeam, number < count ? number + 1 : null);
        bool bothSeams = forward.Exists && after.Exists,
            fitBoth = all.Length > 1 && all[0].Cut == EndCut.Fit && all[^1].Cut == EndCut.Fit;
        IEnumerable<Vec2> points = net.Corners.Select(c => c.At);
        double width = points.Max(p => p.Y) - points.Min(p => p.Y);
        return new(
            Id(number),
            new(
                isMaster ? PlankKind.Master
                    : bothSeams ? PlankKind.Full
                    : PlankKind.Corner,
                new(
                    [.. listed.Corners.Select(c => Space(c.At))],
                    [.. listed.Corners.Select(c => c.At)],
                    [.. cut.Corners.Select(c => c.At)],
                    forward,
                    after
                ),
                new(
                    AlongOwnLine(net),
                    cut.Corners.Max(c => c.At.X) - cut.Corners.Min(c => c.At.X),
                    width,
                    bothSeams ? width : 0,
                    net.Area,
                    0,
                    net.Edge(Stretch.Keel) is null ? null : spec.AngleDegrees,
                    StraightEdges.NotJudged
                ),
                all,
                // Away from the plank, the keel side looks inward (-sin of the deadrise) and the others lie in the normal: nothing holds the plank out.
                new(fitBoth, fitBoth ? true : null),
                new(null, 0, 0, 0, 0, "cold"),
                [.. Ticks(forward, new(0, 1)), .. Ticks(after, new(0, -1))]
            )
        )
        {
            // These planks are laid by hand on a plane; nothing asks them the way back to the hull.
            Map = null!,
        };

        PlankEdge Edge(Stretch on, int? neighbour)
        {
            if (net.Edge(on) is not { } edge)
            {
                return PlankEdge.None;
            }

            (Vec2 a, Vec2 b) = edge.From.X < edge.To.X ? edge : (edge.To, edge.From);
            double length = b.X - a.X;
            int parts = prism.MaxChordMm is { } most ? (int)Math.Ceiling(length / most) : 1;
            ImmutableArray<Vec2> flat =
            [
                .. Enumerable.Range(0, parts + 1).Select(k => a + ((double)k / parts * (b - a))),
            ];
            return new(
                [.. flat.Select(Space)],
                flat,
                length,
                0,
                0,
                "straight",
                neighbour is { } other ? Id(other) : null
            );
        }
    }

    private PlankId Id(int number) => PlankId.OfBottom(Side.Starboard, layer, number);

    private static double AlongOwnLine(LabelledPolygon net)
    {
        List<double> crossings = [];
        foreach ((_, Vec2 a, Vec2 b) in net.Edges)
        {
            if (a.Y <= 0 != b.Y <= 0)
            {
                crossings.Add(a.X - (a.Y / (b.Y - a.Y) * (b.X - a.X)));
            }
        }

        // A corner piece narrower than half a stock width does not reach its own line: its whole length stands in.
        return crossings.Count == 2
            ? Math.Abs(crossings[1] - crossings[0])
            : net.Corners.Max(c => c.At.X) - net.Corners.Min(c => c.At.X);
    }

    /// <summary>Counted from the seam's inboard end, so that the two neighbours are marked at the same points.</summary>
    private IEnumerable<PlankMark> Ticks(PlankEdge edge, Vec2 inward)
    {
        for (int k = 1; edge.Exists && k * prism.TickEveryMm < edge.SeamLengthMm; k++)
        {
            yield return new(
                "witness",
                $"{k}",
                edge.Flat[0] + new Vec2(k * prism.TickEveryMm, 0),
                inward
            );
        }
    }
}
