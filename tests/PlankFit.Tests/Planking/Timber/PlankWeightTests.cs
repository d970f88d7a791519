using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Timber;
using PlankFit.Planking.Whole;
using PlankFit.Planking.Wood;
using PlankFit.Tests.Planking.Keel;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Timber;

/// <summary>Weights and centres against closed forms, against quadratures of their own, and against the layer's area, which no plank had a part in.</summary>
public sealed class PlankWeightTests
{
    private const double Density = 500;

    private static readonly TimberSpec Wood = new([
        new("test", "Test wood", WoodKind.Solid)
        {
            Density = new(Density, SourceTag.Job, "this test"),
        },
    ])
    {
        Species = "test",
    };

    /// <summary>A plane bottom: every plank is a plane polygon, and its centre and area are the polygon's own, exactly.</summary>
    [Fact]
    public void PlaneBottomsAreExact()
    {
        BottomPlan plan = WholeBottomTests.Planned(
            PlaneBottom.Job(20, 2, 9, 1, OffsetsAreTo.Outside) with
            {
                Timber = Wood,
            }
        );
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            LayerTimber timber = plan.Timber!.Of(layer)!;
            foreach (Plank plank in layer.Starboard.Concat(layer.Port))
            {
                (double area, Vec3 centre) = Polygon(plank.Outline);
                Weight weight = plan.Timber.Of(plank.Id)!.Weight!;
                Assert.Equal(area * 9 * Density * 1e-9, weight.Kg, 1e-8);
                Assert.Equal(0, centre.ChordTo(weight.Centre), 1e-4);
                Assert.True(weight.ErrorMm < 1e-3, $"{plank.Id}: {weight.ErrorMm}");
            }

            (double whole, Vec3 middle) = Polygon(layer.Outline);
            Assert.Equal(whole * 9 * Density * 1e-9, timber.Starboard!.Kg, 1e-6);
            Assert.Equal(0, middle.ChordTo(timber.Starboard.Centre), 1e-3);
            Assert.Equal(0, middle.MirroredInY().ChordTo(timber.Port!.Centre), 1e-3);
        }

        Assert.Equal(0, plan.Timber!.Whole!.Centre.Y, 1e-6);
    }

    /// <summary>
    /// H2, z = y (0.2 + 0.1 x) m, 0 to 6 by 0 to 1 m: area of one side 6.7814751681071 m² (closed form), its centre by Simpson's rule on the graph, 600 by 100; every
    /// plank's by its own fan of triangles in plan, cut up small.
    /// </summary>
    [Fact]
    public void TheWarpedBottom()
    {
        BottomPlan plan = WholeBottomTests.Planned(Hypar.Job(1e-3) with { Timber = Wood });
        PlankLayerPlan layer = plan.PlankLayers.Single();
        LayerTimber timber = plan.Timber!.Of(layer)!;
        double kgOfMm2 = 1e-3 * Density * 1e-9;
        Assert.Equal(6781475.1681071, timber.Starboard!.Kg / kgOfMm2, 1.0);
        Vec3 centre = Hypar.CentreOfAll();
        Assert.Equal(0, centre.ChordTo(timber.Starboard.Centre), 0.01);
        foreach (Plank plank in layer.Starboard)
        {
            (double area, Vec3 own) = Hypar.Within([
                .. plank.Outline.Select(p => new Vec2(p.X, p.Y)),
            ]);
            Weight weight = plan.Timber.Of(plank.Id)!.Weight!;
            // The outline's chords keep within 0.002 mm of its curves.
            Assert.Equal(Math.Abs(area), weight.Kg / kgOfMm2, 8.0);
            Assert.Equal(0, own.ChordTo(weight.Centre), 0.01);
            Assert.True(weight.ErrorMm < 0.05, $"{plank.Id}: {weight.ErrorMm}");
        }
    }

    /// <summary>On every demo the planks add up to the layer's own area, and the two sides balance.</summary>
    [Theory]
    [InlineData("survey-launch")]
    [InlineData("pilot-skiff")]
    [InlineData("tender")]
    public void PlanksAddUpToTheirLayer(string hull)
    {
        BottomPlan plan = WholeBottomTests.Planned(DemoPlans.Of(hull).Job with { Timber = Wood });
        double kg = 0;
        foreach (LayerTimber layer in plan.Timber!.Layers)
        {
            Assert.True(
                Math.Abs(layer.AreaDeparture) < 2e-6,
                $"{layer.Name}: {layer.AreaDeparture}"
            );
            Assert.Equal(layer.Starboard!.Kg, layer.Port!.Kg, 1e-9);
            Assert.Equal(0, layer.Both!.Centre.Y, 1e-9);
            PlankLayerPlan laid = plan.PlankLayers.First(l => l.Number == layer.Layer);
            Assert.Equal(
                laid.AreaMm2 * laid.Planks.ThicknessMm * Density * 1e-9,
                layer.Starboard.Kg,
                1e-4
            );
            kg += layer.Both.Kg;
        }

        Assert.Equal(kg, plan.Timber.Whole!.Kg, 1e-9);
    }

    /// <summary>Port laid apart, on its own keel, has its own planks and its own weight: 2 mm less keel, more planking.</summary>
    [Fact]
    public void PortLaidApartIsWeighedApart()
    {
        Job job = PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Outside) with
        {
            Timber = Wood,
            Keel = new([PlaneBottom.KeelLayer("first", "inner", 9)], 0.8, 0.5),
            AsBuilt = new()
            {
                KeelHalfWidths =
                [
                    .. Enumerable
                        .Range(0, 8)
                        .Select(i => new MeasuredKeelHalfWidth("first", $"{i}", Side.Port, 30)),
                ],
            },
        };
        BottomPlan plan = WholeBottomTests.Planned(job);
        LayerTimber inner = plan.Timber!.Layers[0];
        PlankLayerPlan layer = plan.PlankLayers.First();
        Assert.NotNull(layer.PortApart);
        Assert.Equal(layer.Starboard.Length + layer.Port.Length, inner.Planks.Length);
        foreach (Side side in Enum.GetValues<Side>())
        {
            double area = layer.Of(side).AreaMm2;
            Weight weight = side == Side.Port ? inner.Port! : inner.Starboard!;
            Assert.Equal(area * 9 * Density * 1e-9, weight.Kg, 1e-5);
            Assert.Equal(side == Side.Port ? -1 : 1, Math.Sign(weight.Centre.Y));
        }

        Assert.True(inner.Port!.Kg > inner.Starboard!.Kg);
        Assert.True(inner.Both!.Centre.Y < 0);
    }

    /// <summary>Area and centre of a plane polygon in space, by triangles from its first corner, signed by their normals.</summary>
    private static (double Area, Vec3 Centre) Polygon(ImmutableArray<Vec3> p)
    {
        Vec3 normal = Vec3.Zero;
        for (int i = 1; i < p.Length - 1; i++)
        {
            normal += (p[i] - p[0]).Cross(p[i + 1] - p[0]);
        }

        Vec3 unit = normal.Unit(),
            moment = Vec3.Zero;
        double area = 0;
        for (int i = 1; i < p.Length - 1; i++)
        {
            double a = (p[i] - p[0]).Cross(p[i + 1] - p[0]).Dot(unit) / 2;
            area += a;
            moment += a / 3 * (p[0] + p[i] + p[i + 1]);
        }

        return (area, moment / area);
    }
}
