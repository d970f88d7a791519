using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using GeometryFactory = NetTopologySuite.Geometries.GeometryFactory;

namespace PlankFit.Tests.Planking;

/// <summary>
/// What must hold for every plan of every bottom, whatever its hull: the planks cover their layer once, neighbours agree, flat shapes are true to the surface,
/// what is sawn holds both faces. Each law comes back as words where it is broken.
/// </summary>
internal static class BottomLaws
{
    /// <summary>What chords may leave their curve by, mm: the formula's bound.</summary>
    private const double ChordMm = 0.002;

    private static readonly GeometryFactory Polygons = new();

    public static List<string> Broken(BottomPlan plan)
    {
        var broken = new List<string>();
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            OfLayer(plan, layer, broken, mirrored: layer.PortApart is null);
            if (layer.PortApart is { } port)
            {
                // Port measured apart is a plan of its own in the starboard frame; what stands to port is its mirror image.
                OfLayer(
                    plan with
                    {
                        Planked = plan.Planked with { Hull = plan.PortHull },
                    },
                    port,
                    broken,
                    mirrored: true
                );
            }
        }

        return broken;
    }

    private static void OfLayer(
        BottomPlan plan,
        PlankLayerPlan layer,
        List<string> broken,
        bool mirrored
    )
    {
        Areas(layer, broken);
        Seams(layer, broken);
        TilingLaws.Check(layer, broken);
        if (mirrored)
        {
            Port(layer, broken);
        }

        foreach (Plank plank in layer.Starboard)
        {
            Shape(layer, plank, broken);
            OutlineLaws.Check(layer, plank, broken);
            Corners(layer, plank, broken);
            OnTheSurface(plan, layer, plank, broken);
        }

        foreach (Plank plank in layer.Port)
        {
            Shape(layer, plank, broken);
            OutlineLaws.Check(layer, plank, broken);
        }
    }

    /// <summary>Areas of planks sum to the layer's within 1e-5 and the stated strain.</summary>
    private static void Areas(PlankLayerPlan layer, List<string> broken)
    {
        double sum = layer.Starboard.Sum(p => p.AreaMm2),
            strain = layer.Starboard.Sum(p => p.AreaMm2 * p.Bend.EdgeStrainPercent / 100);
        if (!(Math.Abs(sum - layer.AreaMm2) <= (1e-5 * layer.AreaMm2) + strain))
        {
            broken.Add(
                $"layer {layer.Number}: planks sum to {sum} mm², the layer has {layer.AreaMm2}"
            );
        }
    }

    private static void Seams(PlankLayerPlan layer, List<string> broken)
    {
        for (int i = 0; i + 1 < layer.Starboard.Length; i++)
        {
            Plank a = layer.Starboard[i],
                b = layer.Starboard[i + 1];
            if (
                a.Number != layer.Starboard[0].Number + i
                || !a.AfterEdge.Exists
                || !b.ForwardEdge.Exists
                || !a.AfterEdge.Seam.SequenceEqual(b.ForwardEdge.Seam)
            )
            {
                broken.Add($"{a.Id} and {b.Id} do not share one seam");
                continue;
            }

            double la = Length(a.AfterEdge.Flat),
                lb = Length(b.ForwardEdge.Flat);
            if (!(Math.Abs(la - lb) <= 0.05 + a.StrainMm + b.StrainMm))
            {
                broken.Add($"{a.Id} and {b.Id}: shared seam {la} and {lb} mm long in the flat");
            }

            double meanA = a.Outline.Average(p => p.X),
                meanB = b.Outline.Average(p => p.X);
            bool whole =
                a.Ends.Concat(b.Ends).All(e => e.At is PanelEdge.Lower or PanelEdge.Upper)
                && a.Ends.Length == 2
                && b.Ends.Length == 2;
            if (whole && !(meanA < meanB))
            {
                broken.Add($"{a.Id} does not lie forward of {b.Id}");
            }

            TickLaws.Check(a, b, broken);
        }
    }

    private static void Port(PlankLayerPlan layer, List<string> broken)
    {
        for (int i = 0; i < layer.Starboard.Length; i++)
        {
            Plank s = layer.Starboard[i],
                p = layer.Port[i];
            var mirrored = s.Outline.Select(v => v.MirroredInY()).ToHashSet();
            bool same =
                p.Id == s.Id with { Side = Side.Port }
                && p.Outline.Length == s.Outline.Length
                && p.Outline.All(mirrored.Contains)
                && p.FlatNet.ToHashSet().SetEquals(s.FlatNet.Select(v => new Vec2(v.X, -v.Y)))
                && p.FlatCut.Reverse().SequenceEqual(s.FlatCut.Select(v => new Vec2(v.X, -v.Y)))
                && p.Ends.Zip(s.Ends)
                    .All(e =>
                        e.First.CutDegrees == 180 - e.Second.CutDegrees
                        && e.First.BevelDegrees == e.Second.BevelDegrees
                    );
            if (!same)
            {
                broken.Add($"{p.Id} is not the mirror image of {s.Id}");
            }
        }
    }

    /// <summary>A face of the keel's side may run on past a seam near a corner of the bottom: what lies there is the neighbour's.</summary>
    private static bool PastASeam(Plank plank, Vec2 p) =>
        new[] { plank.ForwardEdge, plank.AfterEdge }
            .Where(e => e.Exists)
            .Any(e =>
            {
                // The seam's stretch nearest the place; which side of it the plank lies on is told by the middle of its net shape.
                (Vec2 a, Vec2 b) = e
                    .Flat.Zip(e.Flat.Skip(1))
                    .MinBy(s => (0.5 * (s.First + s.Second)).ChordTo(p));
                Vec2 middle = new(plank.FlatNet.Average(v => v.X), plank.FlatNet.Average(v => v.Y));
                return (b - a).Cross(p - a) * (b - a).Cross(middle - a) < 0;
            });

    private static void Shape(PlankLayerPlan layer, Plank plank, List<string> broken)
    {
        Polygon net = Ring(plank.FlatNet),
            cut = Ring(plank.FlatCut);
        if (!net.IsValid || !cut.IsValid || Area(plank.FlatNet) <= 0 || Area(plank.FlatCut) <= 0)
        {
            broken.Add($"{plank.Id}: a flat outline crosses itself or runs clockwise");
            return;
        }

        if (plank.Outline.Length != plank.FlatNet.Length)
        {
            broken.Add($"{plank.Id}: outline and flat outline have different vertices");
        }

        // A face's line ends on the true curve of the end beside it, which that end's chords may leave by 0.002 mm.
        NetTopologySuite.Geometries.Geometry room = cut.Buffer(1e-3),
            atCorners = cut.Buffer(ChordMm + 1e-4);
        foreach (
            ImmutableArray<Vec2> line in plank
                .Ends.SelectMany(e => new[] { e.OuterLine, e.InnerLine })
                .Append(plank.FlatNet)
        )
        {
            // A tip of one face may reach past the stock's own edge: there is no wood to saw it from, and the plan says so.
            Vec2[] outside =
            [
                .. line.Where(p =>
                    Math.Abs(p.Y) < layer.Planks.WidthMm / 2
                    && (line == plank.FlatNet || !PastASeam(plank, p))
                    && !(
                        line != plank.FlatNet && (p == line[0] || p == line[^1]) ? atCorners : room
                    ).Contains(Polygons.CreatePoint(new Coordinate(p.X, p.Y)))
                ),
            ];
            if (outside.Length > 0)
            {
                broken.Add($"{plank.Id}: the shape to saw does not hold {outside[0]}");
                break;
            }
        }

        // A fitted plank's edges are where they were measured, open seams counting with it; a sawn one is of the stock that it was sawn from.
        if (
            !plank.IsFixed
            && (
                OutlineLaws.WrittenAcrossMm(plank.FlatNet) > layer.Planks.WidthMm
                || OutlineLaws.WrittenAcrossMm(plank.FlatCut) > layer.Planks.WidthMm
                || plank.WidestMm > layer.Planks.WidthMm
            )
        )
        {
            broken.Add(
                $"{plank.Id}: {plank.WidestMm} mm wide, {OutlineLaws.WrittenAcrossMm(plank.FlatNet)} net and {OutlineLaws.WrittenAcrossMm(plank.FlatCut)} to saw, of stock {layer.Planks.WidthMm}"
            );
        }

        foreach (PlankEnd end in plank.Ends)
        {
            if (!(end.CutDegrees > 0 && end.CutDegrees < 180))
            {
                broken.Add(
                    $"{plank.Id}: its cut at the {end.At} stands at {end.CutDegrees} degrees"
                );
            }

            OverhangLaws.Check(layer, plank, end, broken);
        }
    }

    /// <summary>
    /// Flat corners have the angles that they have on the surface, within 0.05°, or where the surface is so curved that no flat shape of the plank's width has them nearer,
    /// within K h²/2 at half its width h: at a distance h of a geodesic lengths along it are out by so much (Gauss's lemma; do Carmo, from memory), and angles by no
    /// more. Chords stand for tangents on both.
    /// </summary>
    private static void Corners(PlankLayerPlan layer, Plank plank, List<string> broken)
    {
        int n = plank.FlatNet.Length;
        double half = (plank.FlatNet.Max(p => p.Y) - plank.FlatNet.Min(p => p.Y)) / 2;
        double Curved(Vec2 flat)
        {
            Uv uv = plank.Map.On(flat);
            return Math.Abs(layer.Surface.At(uv.U, uv.V).GaussCurvature);
        }

        for (int i = 0; i < n; i++)
        {
            Vec2 a = plank.FlatNet[(i + n - 1) % n] - plank.FlatNet[i],
                b = plank.FlatNet[(i + 1) % n] - plank.FlatNet[i];
            Vec3 c = plank.Outline[(i + n - 1) % n] - plank.Outline[i],
                d = plank.Outline[(i + 1) % n] - plank.Outline[i];
            double flat = Math.Atan2(Math.Abs(a.Cross(b)), a.Dot(b)),
                space = Math.Atan2(c.Cross(d).Norm, c.Dot(d));
            if (
                flat < 175 * Math.PI / 180
                && Math.Min(a.Norm, b.Norm) > 0.5
                && Math.Abs(flat - space) > 0.05 * Math.PI / 180
                && Math.Abs(flat - space) > Curved(plank.FlatNet[i]) * half * half / 2
            )
            {
                broken.Add(
                    $"{plank.Id}: corner {i} is {flat * 180 / Math.PI:0.000}° in the flat and {space * 180 / Math.PI:0.000}° on the hull"
                );
            }
        }
    }

    /// <summary>Outline points lie on the layer's mid-thickness surface within 0.02 mm, and so do the middles of their chords within 0.002 mm.</summary>
    private static void OnTheSurface(
        BottomPlan plan,
        PlankLayerPlan layer,
        Plank plank,
        List<string> broken
    )
    {
        StationOnHull near = plan.Hull.Stations.MinBy(s =>
            Math.Abs(s.PositionMm - plank.Outline[0].X)
        )!;
        var uv = new Uv(
            near.U,
            plan.Hull.Surface.UpperV(Math.Max(near.U, plan.Hull.Surface.UFrom + 60)) / 2
        );
        int step = Math.Max(1, plank.Outline.Length / 24);
        for (int i = 0; i < plank.Outline.Length; i += step)
        {
            Vec3 p = plank.Outline[i],
                middle = 0.5 * (p + plank.Outline[(i + 1) % plank.Outline.Length]);
            if (
                !ClosestPoint.TryFind(layer.Surface, p, uv, 1e-7, out ClosestPoint.Result foot)
                || Math.Abs(foot.HeightMm) > 0.02
            )
            {
                broken.Add($"{plank.Id}: point {i} is {foot.HeightMm} mm off the layer's surface");
                return;
            }

            uv = foot.Uv;
            if (
                !ClosestPoint.TryFind(layer.Surface, middle, uv, 1e-7, out foot)
                || Math.Abs(foot.HeightMm) > ChordMm
            )
            {
                broken.Add(
                    $"{plank.Id}: the chord after point {i} leaves the surface by {foot.HeightMm} mm"
                );
            }
        }
    }

    private static Polygon Ring(ImmutableArray<Vec2> points) =>
        Polygons.CreatePolygon([.. points.Append(points[0]).Select(p => new Coordinate(p.X, p.Y))]);

    private static double Area(ImmutableArray<Vec2> p) =>
        Enumerable.Range(0, p.Length).Sum(i => p[i].Cross(p[(i + 1) % p.Length])) / 2;

    private static double Length(ImmutableArray<Vec2> p) =>
        Enumerable.Range(0, p.Length - 1).Sum(i => p[i].ChordTo(p[i + 1]));
}
