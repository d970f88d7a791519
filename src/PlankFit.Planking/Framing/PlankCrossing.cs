using System.Collections.Immutable;
using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Splines;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Framing;

/// <summary>Strips against one plank. The plank may be of either side; strips are in the starboard frame.</summary>
internal sealed class PlankCrossing
{
    /// <summary>Spacing of the places at which a crossing is laid flat exactly, mm.</summary>
    private const double NodeMm = 100;

    /// <summary>What the first look, by a plane under the plank, may be wrong by, mm.</summary>
    private const double RoughMm = 60;

    private const double ChordMm = 0.005;
    private const double ThinMm = 0.002;
    private const double LeastAreaMm2 = 1;

    /// <summary>A line within so many degrees of the plank's own is taken to run along it.</summary>
    private const double AlongDegrees = 15;

    private readonly Plank plank;
    private readonly ImmutableArray<Vec2> net;
    private readonly Vec2 low,
        high,
        middle;
    private readonly Vec3 origin,
        along,
        across;

    public PlankCrossing(Plank plank)
    {
        this.plank = plank;
        net = Thinning.Closed(plank.FlatNet, ThinMm);
        low = new(net.Min(p => p.X), net.Min(p => p.Y));
        high = new(net.Max(p => p.X), net.Max(p => p.Y));
        middle = 0.5 * (low + high);
        SurfacePoint under = plank.Map.Under(middle);
        origin = under.P;
        along = under.UnitTangent(plank.Map.Grain(middle));
        across = under.Left(along) * (plank.Side == Side.Port ? -1 : 1);
    }

    public IEnumerable<FramingCrossing> Of(FramingStrip strip)
    {
        foreach ((int first, int last) in Near(strip))
        {
            if (Cross(strip, strip.Nodes[first], strip.Nodes[last]) is { } crossing)
            {
                yield return crossing;
            }
        }
    }

    private Vec2 Rough(Vec3 p) =>
        middle + new Vec2((p - origin).Dot(along), (p - origin).Dot(across));

    /// <summary>Runs of the strip's nodes that may touch the plank.</summary>
    private IEnumerable<(int First, int Last)> Near(FramingStrip strip)
    {
        double room = RoughMm + (strip.Of.WidthMm / 2);
        int? first = null;
        int n = strip.Nodes.Length;
        for (int i = 0; i <= n; i++)
        {
            bool near = false;
            if (i < n)
            {
                Vec2 p = Rough(strip.Points[i]);
                near =
                    p.X > low.X - room
                    && p.X < high.X + room
                    && p.Y > low.Y - room
                    && p.Y < high.Y + room;
            }

            if (near)
            {
                first ??= i;
            }
            else if (first is { } from)
            {
                yield return (Math.Max(0, from - 1), Math.Min(n - 1, i));
                first = null;
            }
        }
    }

    private FramingCrossing? Cross(FramingStrip strip, double from, double to)
    {
        PlankMap map = plank.Map;
        double half = strip.Of.WidthMm / 2;
        FlatCurve centre,
            left,
            right;
        try
        {
            double[] nodes = NodesOf(from, to);
            centre = FlatCurve.Of(map, nodes, strip.Centre, i => Rough(PointNear(strip, nodes[i])));
            if (Within(centre, half) is not { } part)
            {
                return null;
            }

            (from, to) = part;
            double[] close = NodesOf(from, to);
            double by = plank.Side == Side.Port ? -half : half;
            left = FlatCurve.Of(map, close, strip.Left, i => Beside(centre, close[i], by));
            right = FlatCurve.Of(map, close, strip.Right, i => Beside(centre, close[i], -by));
        }
        catch (GeodesicException)
        {
            // Past the reach of the plank's own map there is nothing of the plank.
            return null;
        }

        ImmutableArray<Vec2> c = centre.Points(from, to, ChordMm),
            l = left.Points(from, to, ChordMm),
            r = right.Points(from, to, ChordMm);
        Vec2 leftward = l[l.Length / 2] - r[r.Length / 2];
        List<Vec2> cover = LineClip.Cut([.. net], l, leftward);
        cover = cover.Count > 2 ? LineClip.Cut(cover, r, -1 * leftward) : cover;
        if (strip.EndsFirst && from <= strip.From && cover.Count > 2)
        {
            cover = LineClip.Cut(cover, [l[0], r[0]], c[0] - c[1]);
        }

        if (strip.EndsLast && to >= strip.To && cover.Count > 2)
        {
            cover = LineClip.Cut(cover, [l[^1], r[^1]], c[^1] - c[^2]);
        }

        return cover.Count < 3 || FlatPolygon.Area(cover) < LeastAreaMm2
            ? null
            : Oriented(
                new(
                    strip.Of,
                    RunInside.Of(c, net),
                    RunInside.Of(plank.Side == Side.Port ? r : l, net),
                    RunInside.Of(plank.Side == Side.Port ? l : r, net),
                    [.. cover]
                ),
                c
            );
    }

    private static double[] NodesOf(double from, double to)
    {
        // Six at least: with fewer a spline bends at its ends as a parabola does.
        int n = Math.Max(5, (int)Math.Ceiling((to - from) / NodeMm));
        double[] nodes = new double[n + 1];
        for (int i = 0; i <= n; i++)
        {
            nodes[i] = from + ((to - from) * i / n);
        }

        nodes[n] = to;
        return nodes;
    }

    private static Vec2 Beside(FlatCurve centre, double t, double by) =>
        centre.At(t) + (by * centre.Slope(t).Unit().Left());

    /// <summary>The part of a centre that is near enough to the net shape for its edges to touch it, with a little to spare.</summary>
    private (double From, double To)? Within(FlatCurve centre, double halfMm)
    {
        const int n = 40;
        double room = halfMm + 3,
            from = double.NaN,
            to = double.NaN,
            step = (centre.To - centre.From) / n;
        for (int i = 0; i <= n; i++)
        {
            double t = centre.From + (step * i);
            Vec2 p = centre.At(t);
            if (
                p.X > low.X - room
                && p.X < high.X + room
                && p.Y > low.Y - room
                && p.Y < high.Y + room
            )
            {
                from = double.IsNaN(from) ? t : from;
                to = t;
            }
        }

        return double.IsNaN(from)
            ? null
            : (Math.Max(centre.From, from - step), Math.Min(centre.To, to + step));
    }

    /// <summary>As the crossing's own words ask: towards greater n or, along the plank, outboard.</summary>
    internal static FramingCrossing Oriented(FramingCrossing c, IReadOnlyList<Vec2> line)
    {
        Vec2 run = line[^1] - line[0];
        bool lies = Math.Abs(run.Y) < Math.Tan(AlongDegrees * Math.PI / 180) * Math.Abs(run.X);
        return (lies ? run.X : run.Y) >= 0
            ? c
            : c with
            {
                Centre = [.. c.Centre.Reverse()],
                OneEdge = [.. c.OtherEdge.Reverse()],
                OtherEdge = [.. c.OneEdge.Reverse()],
            };
    }

    private static Vec3 PointNear(FramingStrip strip, double t)
    {
        int i = Knots.Span(strip.Nodes, t);
        double part = (t - strip.Nodes[i]) / (strip.Nodes[i + 1] - strip.Nodes[i]);
        return strip.Points[i] + (part * (strip.Points[i + 1] - strip.Points[i]));
    }
}
