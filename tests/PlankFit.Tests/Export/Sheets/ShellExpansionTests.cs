using System.Collections.Immutable;
using PlankFit.Export.Views;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>The expansion of a prism is its exact development: a plane needs only be turned into the paper.</summary>
public sealed class ShellExpansionTests
{
    private static readonly Prism Hull = new(KeelHalfBreadthMm: 40);

    [Fact]
    public void PlanksOfAPrismComeOutInTheirTrueShape()
    {
        BottomPlan plan = PrismaticPlan.Build(Hull with { MaxChordMm = 30 });
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            var expanded = ExpandedLayer.Of(plan, layer);
            Assert.Equal(layer.Starboard.Length, expanded.Planks.Length);
            foreach ((Plank plank, ImmutableArray<Vec2> outline) in expanded.Planks)
            {
                Assert.Equal(plank.AreaMm2, Area(outline), 1e-3);
                // Every expanded vertex is one of the flat net's, seen from the same first vertex.
                foreach (Vec2 p in outline)
                {
                    double away = p.ChordTo(outline[0]);
                    Assert.Contains(
                        plank.FlatNet,
                        f => Math.Abs(f.ChordTo(plank.FlatNet[0]) - away) < 1e-6
                    );
                }
            }
        }
    }

    [Fact]
    public void GirthsAreThoseOfTheSlantFromTheLayersOwnEdge()
    {
        BottomPlan plan = PrismaticPlan.Build(Hull);
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            var expanded = ExpandedLayer.Of(plan, layer);
            double keel = Hull.KeelMm(layer.NeutralOffsetMm);
            Assert.Equal(7, expanded.Stations.Length);
            Assert.All(
                expanded.Stations,
                s =>
                {
                    Assert.Equal(Hull.ChineMm - keel, s.GirthMm, 1e-6);
                    Assert.Equal(0, s.Lower.Y, 1e-6);
                    Assert.Equal(s.U, s.Lower.X, 1e-6);
                }
            );
        }
    }

    [Fact]
    public void SeamsCrossStationsWhereStraightLinesDo()
    {
        BottomPlan plan = PrismaticPlan.Build(Hull with { MaxChordMm = 30 });
        int met = 0;
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            var expanded = ExpandedLayer.Of(plan, layer);
            double keel = Hull.KeelMm(layer.NeutralOffsetMm),
                lean = layer.Planks.Heads == Heads.Aft ? 1 : -1;
            foreach ((Plank plank, _) in expanded.Planks)
            {
                foreach (ExpandedStation station in expanded.Stations)
                {
                    // x = x at keel + lean (a - keel): at 45 degrees a seam goes out as fast as along.
                    double atKeel = PrismChecks.SeamX(Hull, layer, plank.Number, keel),
                        girth = (station.U - atKeel) * lean;
                    bool crosses = girth > 1e-6 && girth < Hull.ChineMm - keel - 1e-6;
                    double? found = expanded.GirthWhere(plank.AfterEdge, station);
                    if (crosses && station.U > 1 && station.U < Hull.LengthMm - 1)
                    {
                        Assert.NotNull(found);
                        Assert.Equal(girth, found.Value, 1e-6);
                        met++;
                    }
                }
            }
        }

        Assert.True(met >= 40, $"{met} crossings");
    }

    /// <summary>On the warped hulls: girths by adding up short chords of the layer's surface, a way of its own.</summary>
    [Theory]
    [InlineData("survey-launch")]
    [InlineData("pilot-skiff")]
    [InlineData("tender")]
    public void GirthsOfTheDemoHullsAgreeWithAddedChords(string hull)
    {
        BottomPlan plan = DemoPlans.Of(hull);
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            var expanded = ExpandedLayer.Of(plan, layer);
            Assert.True(expanded.Stations.Length >= plan.Hull.Stations.Length - 1);
            foreach (ExpandedStation station in expanded.Stations)
            {
                double from = LowerV(plan, layer, station.U),
                    to = plan.Hull.Surface.UpperV(station.U);
                double sum = 0;
                Vec3 last = layer.Surface.At(station.U, from).P;
                for (int i = 1; i <= 400; i++)
                {
                    Vec3 next = layer.Surface.At(station.U, from + ((to - from) * i / 400)).P;
                    sum += last.ChordTo(next);
                    last = next;
                }

                Assert.Equal(sum, station.GirthMm, 0.02);
            }
        }
    }

    /// <summary>
    /// Where a plumb keel side cuts the layer: the v at which y on the layer is the half-width that keel.json tells at the same x, or where the job names no keel
    /// layers that of the table's keel line; by bisection.
    /// </summary>
    private static double LowerV(BottomPlan plan, PlankLayerPlan layer, double u)
    {
        // Where the table is to the inside, a layer's edge lies inboard of the keel line's own normals: v below 0.
        double high = plan.Hull.Surface.UpperV(u),
            low = -0.3 * high;
        for (int i = 0; i < 60; i++)
        {
            double v = (low + high) / 2;
            Vec3 p = layer.Surface.At(u, v).P;
            if (p.Y < KeelY(plan, layer, p.X))
            {
                low = v;
            }
            else
            {
                high = v;
            }
        }

        return (low + high) / 2;
    }

    private static double KeelY(BottomPlan plan, PlankLayerPlan layer, double x)
    {
        if (plan.Keel is { } keel)
        {
            KeelStation[] run =
            [
                .. keel
                    .Layers.Single(k => k.Spec.Meets == layer.Planks.Name)
                    .Between.Where(r => r.Side == Side.Starboard),
            ];
            int after = Math.Clamp(
                Array.FindIndex(run, r => r.PositionMm >= x) is >= 0 and var at ? at : run.Length,
                1,
                run.Length - 1
            );
            (KeelStation a, KeelStation b) = (run[after - 1], run[after]);
            return a.HalfWidthMm
                + (
                    (b.HalfWidthMm - a.HalfWidthMm)
                    * (x - a.PositionMm)
                    / (b.PositionMm - a.PositionMm)
                );
        }

        double low = plan.Hull.Surface.UFrom - 200,
            high = plan.Hull.Surface.UTo + 200;
        for (int i = 0; i < 60; i++)
        {
            double u = (low + high) / 2;
            if (plan.Hull.Surface.At(u, 0).P.X < x)
            {
                low = u;
            }
            else
            {
                high = u;
            }
        }

        return plan.Hull.Surface.At((low + high) / 2, 0).P.Y;
    }

    private static double Area(ImmutableArray<Vec2> polygon)
    {
        double twice = 0;
        for (int i = 0; i < polygon.Length; i++)
        {
            twice += polygon[i].Cross(polygon[(i + 1) % polygon.Length]);
        }

        return Math.Abs(twice) / 2;
    }
}
