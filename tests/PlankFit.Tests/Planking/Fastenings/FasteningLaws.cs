using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using NetTopologySuite.LinearReferencing;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.Fastenings;

/// <summary>
/// The rules of fastenings asked of a plan by other means than it was made: distances on a plank by NetTopologySuite from the records of planks and of what
/// lies behind them, distances from skin to skin in space, along normals.
/// </summary>
internal static class FasteningLaws
{
    private const double Near = 2e-3;

    /// <summary>Through space, from skin to skin: a straight chord for a distance on a bent surface.</summary>
    private const double InSpace = 0.05;

    /// <summary>A free place must be free by this much before it is said to have been missed.</summary>
    private const double Clearly = 0.4;

    private static readonly GeometryFactory Nts = new();

    public static List<string> Broken(BottomPlan plan)
    {
        List<string> broken = [];
        FasteningPlan fastenings = plan.Fastenings!;
        foreach (Side side in new[] { Side.Starboard, Side.Port })
        {
            var lower = new List<(PlankLayerPlan Layer, SurfacePoint At)>();
            PlankLayerPlan? below = null;
            foreach (PlankLayerPlan layer in plan.PlankLayers)
            {
                LayerFastenings rule = fastenings.Layers.Single(l => l.Layer == layer.Number);
                var under = UnderLayer.Of(plan, layer, below, side, lower);
                foreach (Plank plank in layer.On(side))
                {
                    broken.AddRange(OfPlank(plan, plank, rule.Rule, under));
                }

                lower.AddRange(
                    layer
                        .On(side)
                        .SelectMany(p =>
                            fastenings.On(p.Id)!.Points.Select(f => (layer, p.Map.Under(f.At)))
                        )
                );
                below = layer;
            }
        }

        broken.AddRange(RunLaws.Broken(plan));
        broken.AddRange(Totals(plan));
        return broken;
    }

    private static IEnumerable<string> OfPlank(
        BottomPlan plan,
        Plank plank,
        FasteningRule rule,
        UnderLayer under
    )
    {
        PlankFastenings made = plan.Fastenings!.On(plank.Id)!;
        FramingCrossing[] behind = [.. plan.Framing.On(plank.Id)];
        var rules = new RulesOnPlank(plan, plank, rule, behind, under);
        foreach (Fastening f in made.Points)
        {
            string who = $"{plank.Id} {f.Use} {f.Backing} at {f.At.X:0.00}, {f.At.Y:0.00}";
            foreach (string fault in rules.Faults(f.At))
            {
                yield return $"{who}: {fault}";
            }

            if (f.Use == FasteningUse.Backing)
            {
                FramingCrossing timber = behind.Single(b => b.Of.Name == f.Backing);
                if (timber.Of.Kind == FramingKind.Open)
                {
                    yield return $"{who}: into an open place";
                }

                if (RulesOnPlank.OffTimber(timber, f.At, rule.MarginMm) is { } off)
                {
                    yield return $"{who}: {off}";
                }
            }
            else if (f.Use == FasteningUse.PullDown)
            {
                foreach (FramingCrossing timber in behind.Where(b => b.Of.Kind != FramingKind.Open))
                {
                    double far = Area(timber.Cover).Distance(Point(f.At));
                    if (far < rule.MarginMm - Near)
                    {
                        yield return $"{who}: a pull-down point {far} mm from {timber.Of.Name}";
                    }
                }
            }
        }

        for (int i = 0; i < made.Points.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                double apart = made.Points[i].At.ChordTo(made.Points[j].At);
                if (apart < Math.Min(rule.NearestMm, apart < 1e-9 ? 0.001 : rule.NearestMm) - Near)
                {
                    yield return $"{plank.Id}: two fastenings {apart} mm apart, {rule.NearestMm} asked";
                }
            }
        }

        if (rule.Kind != FasteningKind.None)
        {
            foreach (
                FramingCrossing timber in behind.Where(b =>
                    b.Of.Kind != FramingKind.Open && b.Centre.Length > 1
                )
            )
            {
                foreach (string gap in Gaps(plank, made, timber, rule, rules, plan))
                {
                    yield return gap;
                }
            }
        }
    }

    /// <summary>No stretch along a timber's middle longer than the spacing holds a place that is clearly free.</summary>
    private static IEnumerable<string> Gaps(
        Plank plank,
        PlankFastenings made,
        FramingCrossing timber,
        FasteningRule rule,
        RulesOnPlank rules,
        BottomPlan plan
    )
    {
        if (
            (plan.Joints.On(plank.Id)?.Joints ?? []).Any(j =>
                Area(timber.Cover).Distance(Line([.. j.OuterLine])) < 1
            )
        )
        {
            // At a joint each piece has a row of its own, beside the middle.
            yield break;
        }

        Fastening[] here = [.. made.Points.Where(f => f.Backing == timber.Of.Name)];
        var line = new LengthIndexedLine(Line(timber.Centre));
        double length = line.EndIndex;
        double[] at = [.. here.Select(f => line.Project(new Coordinate(f.At.X, f.At.Y))).Order()];
        double[] stops = [-rule.SpacingMm - 1, .. at, length + rule.SpacingMm + 1];
        if (here.Length == 0)
        {
            stops = [-1e6, 1e6];
        }

        for (int i = 1; i < stops.Length; i++)
        {
            if (stops[i] - stops[i - 1] <= rule.SpacingMm + 0.5)
            {
                continue;
            }

            double from = Math.Max(0, stops[i - 1] + (i == 1 ? 0 : rule.NearestMm)),
                to = Math.Min(length, stops[i] - (i == stops.Length - 1 ? 0 : rule.NearestMm));
            // Before the first and after the last a place may stay free within the spacing of it.
            if (here.Length > 0 && i == 1)
            {
                to = Math.Min(to, stops[1] - rule.SpacingMm);
            }

            if (here.Length > 0 && i == stops.Length - 1)
            {
                from = Math.Max(from, stops[i - 1] + rule.SpacingMm);
            }

            for (double t = from; t <= to; t += 1.5)
            {
                Coordinate c = line.ExtractPoint(t);
                var p = new Vec2(c.X, c.Y);
                if (
                    RulesOnPlank.OffTimber(timber, p, rule.MarginMm + Clearly) is null
                    && made.Points.All(f => f.At.ChordTo(p) > rule.NearestMm + Clearly)
                    && !rules.Faults(p, Clearly).Any()
                )
                {
                    yield return $"{plank.Id} on {timber.Of.Name}: free at {t:0.0} of {length:0.0} mm ({p.X:0.0}, {p.Y:0.0}), fastened at {string.Join(", ", at.Select(a => a.ToString("0.0")))}";
                    yield break;
                }
            }
        }
    }

    private static IEnumerable<string> Totals(BottomPlan plan)
    {
        FasteningPlan fastenings = plan.Fastenings!;
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            foreach (Side side in new[] { Side.Starboard, Side.Port })
            {
                int points = layer.On(side).Sum(p => fastenings.On(p.Id)!.Points.Length),
                    total = fastenings
                        .Totals.Where(t => t.Layer == layer.Number && t.Side == side)
                        .Sum(t => t.Count);
                if (points != total)
                {
                    yield return $"layer {layer.Number} {side}: {points} points, {total} in the totals";
                }
            }
        }
    }

    internal static Point Point(Vec2 p) => Nts.CreatePoint(new Coordinate(p.X, p.Y));

    internal static LineString Line(IEnumerable<Vec2> points) =>
        Nts.CreateLineString([.. points.Select(p => new Coordinate(p.X, p.Y))]);

    internal static Polygon Area(IReadOnlyList<Vec2> points) =>
        Nts.CreatePolygon([.. points.Append(points[0]).Select(p => new Coordinate(p.X, p.Y))]);

    /// <summary>All that is under a skin of one side, brought out along normals to its own surface.</summary>
    internal sealed record UnderLayer(Vec3[][] Seams, Vec3[] Spots)
    {
        public static UnderLayer Of(
            BottomPlan plan,
            PlankLayerPlan layer,
            PlankLayerPlan? below,
            Side side,
            List<(PlankLayerPlan Layer, SurfacePoint At)> lower
        )
        {
            Vec3 Out(PlankLayerPlan from, SurfacePoint p) =>
                p.P + ((layer.NeutralOffsetMm - from.NeutralOffsetMm) * p.Normal);
            return new(
                [
                    .. (below?.On(side) ?? [])
                        .SelectMany(p =>
                            (p.AfterEdge.Exists ? new[] { p.AfterEdge.Flat } : [])
                                .Concat(
                                    (plan.Joints.On(p.Id)?.Joints ?? []).Select(j => j.OuterLine)
                                )
                                .Select(l => (p, l))
                        )
                        .Select(e =>
                            e.l.Where((_, i) => i % 4 == 0 || i == e.l.Length - 1)
                                .Select(v => Out(below!, e.p.Map.Under(v)))
                                .ToArray()
                        ),
                ],
                [.. lower.Select(l => Out(l.Layer, l.At))]
            );
        }
    }

    /// <summary>The rules that hold for any point of a plank.</summary>
    internal sealed class RulesOnPlank(
        BottomPlan plan,
        Plank plank,
        FasteningRule rule,
        FramingCrossing[] behind,
        UnderLayer under
    )
    {
        private readonly Polygon net = Area(plank.FlatNet);

        private readonly (LineString Line, double Asks, string What)[] lines =
        [
            .. new[] { plank.ForwardEdge, plank.AfterEdge }
                .Where(e => e.Exists)
                .Select(e => (Line(e.Flat), rule.EdgeMm, "a seam")),
            .. plank.Ends.Select(e => (Line(e.NetLine), rule.EndMm, $"the end at {e.At}")),
            .. (plan.Joints.On(plank.Id)?.Joints ?? [])
                .SelectMany(j => new[] { j.OuterLine, j.InnerLine })
                .Select(l => (Line(l), rule.JointMm, "a joint")),
        ];

        private readonly Polygon[] open =
        [
            .. behind.Where(b => b.Of.Kind == FramingKind.Open).Select(b => Area(b.Cover)),
        ];

        public IEnumerable<string> Faults(Vec2 at, double more = 0)
        {
            Point p = Point(at);
            if (!net.Covers(p))
            {
                yield return "off the plank";
            }

            foreach ((LineString line, double asks, string what) in lines)
            {
                double far = line.Distance(p);
                if (far < asks + more - Near)
                {
                    yield return $"{far} mm from {what}, {asks} asked";
                }
            }

            foreach (Polygon place in open)
            {
                double far = place.Distance(p);
                if (far < rule.OpenMm + more - Near || far <= 0)
                {
                    yield return $"{far} mm from an open place";
                }
            }

            Vec3 there = plank.Map.Under(at).P;
            foreach (Vec3 spot in under.Spots)
            {
                double far = spot.ChordTo(there);
                if (far < rule.MissMm + more - InSpace)
                {
                    yield return $"{far} mm from a fastening below, {rule.MissMm} asked";
                }
            }

            foreach (Vec3[] seam in under.Seams)
            {
                for (int i = 1; i < seam.Length; i++)
                {
                    double far = Distance(there, seam[i - 1], seam[i]);
                    if (far < rule.BelowMm + more - InSpace)
                    {
                        yield return $"{far} mm from a seam below, {rule.BelowMm} asked";
                    }
                }
            }
        }

        public static string? OffTimber(FramingCrossing timber, Vec2 at, double margin)
        {
            Point p = Point(at);
            if (!Area(timber.Cover).Covers(p))
            {
                return $"beside {timber.Of.Name}";
            }

            foreach (ImmutableArray<Vec2> edge in new[] { timber.OneEdge, timber.OtherEdge })
            {
                if (edge.Length > 1 && Line(edge).Distance(p) < margin - Near)
                {
                    return $"{Line(edge).Distance(p)} mm from the edge of {timber.Of.Name}, {margin} asked";
                }
            }

            return null;
        }

        private static double Distance(Vec3 p, Vec3 a, Vec3 b)
        {
            Vec3 side = b - a;
            double part = Math.Clamp((p - a).Dot(side) / side.Dot(side), 0, 1);
            return p.ChordTo(a + (part * side));
        }
    }
}
