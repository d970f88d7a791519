using NetTopologySuite.Geometries;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.Joints;

/// <summary>What must hold of the pieces of any plan, worked out anew from the planks and not from the planner's own measures.</summary>
internal static class JointLaws
{
    /// <summary>The planner's common measure along a layer against the surface's own strip coordinates, from one plank to the next, mm.</summary>
    private const double WithinMm = 0.3;

    public static void Hold(BottomPlan plan)
    {
        JointPlan joints = plan.Joints!;
        foreach (JointedLayer layer in joints.Layers)
        {
            PlankLayerPlan of = plan.PlankLayers.Single(l => l.Number == layer.Layer);
            Plank[] planks = [.. of.On(layer.Side)];
            Assert.Equal(
                planks.Where(p => Long(p) > layer.Stock.LongestMm + 1e-6).Select(p => p.Id),
                layer.Planks.Select(p => p.PlankId)
            );
            foreach (JointedPlank pieced in layer.Planks)
            {
                Pieces(planks.Single(p => p.Id == pieced.PlankId), pieced, layer);
            }

            Rules(planks, layer);
        }
    }

    private static double Long(Plank p) => p.FlatCut.Max(v => v.X) - p.FlatCut.Min(v => v.X);

    private static void Pieces(Plank plank, JointedPlank pieced, JointedLayer layer)
    {
        Assert.Equal(pieced.Joints.Length + 1, pieced.Pieces.Length);
        double net = 0,
            cut = 0;
        for (int i = 0; i < pieced.Pieces.Length; i++)
        {
            PlankPiece piece = pieced.Pieces[i];
            Assert.Equal($"{plank.Id}{(char)('a' + i)}", piece.Id.ToString());
            double length = piece.Cut.Max(p => p.X) - piece.Cut.Min(p => p.X);
            Assert.Equal(length, piece.LengthMm, 1e-6);
            Assert.InRange(length, layer.Stock.ShortestMm - 1e-6, layer.Stock.LongestMm + 1e-6);
            Assert.True(PlanarShapes.IsSimple(piece.Net), piece.Id.ToString());
            Assert.True(PlanarShapes.IsSimple(piece.Cut), piece.Id.ToString());
            Assert.True(Area(piece.Net) > 0 && Area(piece.Cut) > 0, piece.Id.ToString());
            Assert.InRange(PlanarShapes.FurthestOutside(plank.FlatNet, piece.Net).Mm, 0, 1e-6);
            Assert.InRange(PlanarShapes.FurthestOutside(plank.FlatCut, piece.Cut).Mm, 0, 1e-6);
            net += Area(piece.Net);
            cut += Area(piece.Cut);
            Assert.Same(i == 0 ? null : pieced.Joints[i - 1], piece.Inboard);
            Assert.Same(i == pieced.Joints.Length ? null : pieced.Joints[i], piece.Outboard);
        }

        // A scarf's overlap is in both its pieces; a butt's in neither.
        Assert.Equal(
            Area(plank.FlatNet),
            net - pieced.Joints.Sum(j => Overlap(j, plank.FlatNet)),
            1e-6 * net
        );
        Assert.Equal(
            Area(plank.FlatCut),
            cut - pieced.Joints.Sum(j => Overlap(j, plank.FlatCut)),
            1e-6 * cut
        );
        if (pieced.Joints.All(j => j.CutDegrees == 90))
        {
            Assert.Equal(
                Long(plank) + pieced.Joints.Sum(j => j.LengthMm),
                pieced.Pieces.Sum(p => p.LengthMm),
                1e-6
            );
        }
    }

    /// <summary>The part of an outline between the two lines of a scarf, by a polygon library.</summary>
    private static double Overlap(PlankJoint joint, IReadOnlyList<Vec2> outline)
    {
        if (joint.Kind == JointKind.Butt)
        {
            return 0;
        }

        double from = joint.AtMm - (joint.LengthMm / 2),
            to = joint.AtMm + (joint.LengthMm / 2);
        Assert.Equal(joint.LengthMm, Math.Abs(joint.OuterLine[0].X - joint.InnerLine[0].X), 1e-6);
        var shapes = new GeometryFactory();
        Polygon whole = shapes.CreatePolygon([
            .. outline.Append(outline[0]).Select(p => new Coordinate(p.X, p.Y)),
        ]);
        return whole.Intersection(shapes.ToGeometry(new Envelope(from, to, -1e5, 1e5))).Area;
    }

    private static void Rules(Plank[] planks, JointedLayer layer)
    {
        var byId = layer.Planks.ToDictionary(p => p.PlankId);
        double? Asked(JointRuleKind what) =>
            layer.Rules.FirstOrDefault(r => r.What == what)?.DistanceMm;
        int between =
            layer.Rules.FirstOrDefault(r => r.What == JointRuleKind.SameBacking)?.Count ?? 0;
        for (int i = 0; i < planks.Length; i++)
        {
            for (int j = i + 1; j <= Math.Min(i + Math.Max(2, between), planks.Length - 1); j++)
            {
                foreach (PlankJoint a in Of(planks[i]))
                {
                    foreach (PlankJoint b in Of(planks[j]))
                    {
                        // By the surface's own strip coordinates, where the planner goes by square feet in space.
                        double along = Math.Abs(
                            planks[i].Map.Flat(planks[j].Map.On(new Vec2(b.AtMm, 0))).X - a.AtMm
                        );
                        if (j == i + 1 && Asked(JointRuleKind.NextPlank) is { } next)
                        {
                            Assert.True(along > next - WithinMm, $"{a.Id} {b.Id}: {along}");
                            Assert.True(
                                a.Distances.Single(d =>
                                    d.Rule.What == JointRuleKind.NextPlank
                                ).DistanceMm
                                    <= along + WithinMm,
                                $"{a.Id} {b.Id}: {along}"
                            );
                        }

                        if (j == i + 2 && Asked(JointRuleKind.OneBetween) is { } one)
                        {
                            Assert.True(along > one - (2 * WithinMm), $"{a.Id} {b.Id}: {along}");
                        }

                        if (j - i - 1 < between && a.Backing is { } backing && Named(backing))
                        {
                            Assert.NotEqual(backing, b.Backing);
                        }
                    }
                }
            }
        }

        IEnumerable<PlankJoint> Of(Plank plank) =>
            byId.TryGetValue(plank.Id, out JointedPlank? pieced) ? pieced.Joints : [];
        static bool Named(string backing) =>
            backing != "block" && !backing.StartsWith("layer ", StringComparison.Ordinal);
    }

    public static double Area(IReadOnlyList<Vec2> polygon) =>
        0.5
        * Enumerable
            .Range(0, polygon.Count)
            .Sum(i => polygon[i].Cross(polygon[(i + 1) % polygon.Count]));
}
