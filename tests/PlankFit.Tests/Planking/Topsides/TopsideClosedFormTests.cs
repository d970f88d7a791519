using PlankFit.Geometry.Development;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Panels;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.Topsides;

/// <summary>Topsides of which every plank is known: planes, plumb and flared, an upright cylinder, a cone.</summary>
public sealed class TopsideClosedFormTests
{
    private const double LengthMm = 4000,
        HeightMm = 700;

    /// <summary>A plane is planked by parallelograms: as long as its height over the sine of the angle, cut at that angle, on the plane of their layer.</summary>
    [Theory]
    [InlineData(0, 45, OffsetsAreTo.Outside)]
    [InlineData(0, 60, OffsetsAreTo.Inside)]
    [InlineData(18, 45, OffsetsAreTo.Outside)]
    [InlineData(-9, 52, OffsetsAreTo.Outside)]
    public void APlaneTopsideIsPlankedByParallelograms(
        double flareDegrees,
        double angle,
        OffsetsAreTo to
    )
    {
        double flare = flareDegrees * Math.PI / 180;
        double[] x = [.. Enumerable.Range(0, 9).Select(i => i * LengthMm / 8)];
        BottomPlan plan = TopsideJob.Topside(
            TopsideJob.Of(
                [.. x.Select(a => (a, 900.0, 250.0))],
                [
                    .. x.Select(a =>
                        (a, 900 + (HeightMm * Math.Sin(flare)), 250 + (HeightMm * Math.Cos(flare)))
                    ),
                ],
                angle,
                [6, 8],
                to
            )
        );
        Vec3 outward = new(0, Math.Cos(flare), -Math.Sin(flare));
        double stack = 14,
            inner = to == OffsetsAreTo.Outside ? -stack : 0;
        double sin = Math.Sin(angle * Math.PI / 180);
        foreach (
            (PlankLayerPlan layer, double off) in plan.PlankLayers.Zip([inner + 3, inner + 10])
        )
        {
            Assert.Equal(off, layer.NeutralOffsetMm, 1e-12);
            Assert.Equal(LengthMm * HeightMm, layer.AreaMm2, 1e-3);
            Plank[] whole =
            [
                .. layer.Starboard.Where(p =>
                    p.Ends.Length == 2
                    && p.Ends[0].At == PanelEdge.Lower
                    && p.Ends[1].At == PanelEdge.Upper
                ),
            ];
            Assert.True(whole.Length > 15, $"{whole.Length} whole planks");
            foreach (Plank plank in whole)
            {
                Assert.Equal("T", plank.Id.Panel);
                Assert.Equal(HeightMm / sin, plank.NetLengthMm, 1e-5);
                Assert.Equal(angle, plank.KeelAngleDegrees!.Value, 1e-7);
                Assert.Equal(plank.WidestMm * HeightMm / sin, plank.AreaMm2, 1e-2);
                Assert.InRange(plank.WidestMm, TopsideJob.WidthMm - 1, TopsideJob.WidthMm);
                foreach (PlankEnd end in plank.Ends)
                {
                    double cut = end.CutDegrees;
                    Assert.Equal(angle, Math.Min(cut, 180 - cut), 1e-6);
                    Assert.Equal(0, end.BevelDegrees);
                    Assert.Equal(EndCut.LeftLong, end.Cut);
                }

                Assert.Equal("chine", plank.Ends[0].Word);
                Assert.Equal("sheer", plank.Ends[1].Word);
                foreach (Vec3 p in plank.Outline)
                {
                    Assert.Equal(off, (p - new Vec3(0, 900, 250)).Dot(outward), 1e-9);
                }

                foreach (Vec3 p in plank.Ends[0].Outline)
                {
                    Vec3 foot = p - (off * outward);
                    Assert.Equal(250, foot.Z, 1e-9);
                    Assert.Equal(900, foot.Y, 1e-9);
                }
            }
        }

        Assert.Empty(BottomLaws.Broken(plan));
    }

    /// <summary>Past a raked stem and an upright transom planks end on these lines.</summary>
    [Fact]
    public void PlanksEndOnTheStemAsItRakes()
    {
        double[] x = [.. Enumerable.Range(0, 9).Select(i => i * LengthMm / 8)];
        const double rake = 300;
        BottomPlan plan = TopsideJob.Topside(
            TopsideJob.Of(
                [.. x.Select(a => (a + (rake * (1 - (a / LengthMm))), 900.0, 0.0))],
                [.. x.Select(a => (a, 900.0, HeightMm))],
                45,
                [6]
            )
        );
        PlankEnd[] stem =
        [
            .. plan
                .PlankLayers.Single()
                .Starboard.SelectMany(p => p.Ends)
                .Where(e => e.At == PanelEdge.Stem),
        ];
        Assert.NotEmpty(stem);
        foreach (Vec3 p in stem.SelectMany(e => e.Outline))
        {
            Assert.Equal(rake * (1 - (p.Z / HeightMm)), p.X, 1e-6);
        }

        double length = stem.Sum(e => e.Outline[0].ChordTo(e.Outline[^1]));
        Assert.Equal(Math.Sqrt((rake * rake) + (HeightMm * HeightMm)), length, 1e-6);
        Assert.Equal((LengthMm - (rake / 2)) * HeightMm, plan.PlankLayers.Single().AreaMm2, 1e-2);
        Assert.Empty(BottomLaws.Broken(plan));
    }

    /// <summary>
    /// An upright cylinder unrolls to a rectangle: planks are helices, as long in every layer as on a plane, and edges are straight. The spline through 41 stations
    /// leaves the circle by less than 0.001 mm.
    /// </summary>
    [Fact]
    public void AnUprightCylinderIsPlankedByHelices()
    {
        const double radius = 9000,
            angle = 50;
        BottomPlan plan = TopsideJob.Topside(
            TopsideJob.Of(Arc(radius, 0), Arc(radius, HeightMm), angle, [5, 5])
        );
        double sin = Math.Sin(angle * Math.PI / 180),
            cos = Math.Cos(angle * Math.PI / 180);
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            double r = radius + layer.NeutralOffsetMm;
            Assert.Equal(r * Turn * HeightMm, layer.AreaMm2, 1e-6 * layer.AreaMm2);
            foreach (
                Plank plank in layer.Starboard.Where(p =>
                    p.Ends.Length == 2
                    && p.Ends.All(e => e.At is PanelEdge.Lower or PanelEdge.Upper)
                )
            )
            {
                Assert.Equal(HeightMm / sin, plank.NetLengthMm, 5e-3);
                Assert.Equal(angle, plank.KeelAngleDegrees!.Value, 2e-3);
                Assert.True(plank.StraightEdges);
                Assert.InRange(
                    Math.Max(plank.ForwardEdge.RoundMm, plank.ForwardEdge.HollowMm),
                    0,
                    0.005
                );

                // Curvature along a helix at the angle from the level: cos² over the radius.
                Assert.Equal(r / (cos * cos), plank.Bend.LeastRadiusMm!.Value, 0.002 * radius);
            }
        }

        Assert.Empty(BottomLaws.Broken(plan));
    }

    /// <summary>A cone unrolls to a part of a ring: edges, diagonals and area of the panel laid flat.</summary>
    [Fact]
    public void AConicalTopsideUnrollsToAPartOfARing()
    {
        const double low = 8000,
            high = 8300;
        BottomPlan plan = TopsideJob.Topside(
            TopsideJob.Of(Arc(low, 0), Arc(high, HeightMm), 45, [5])
        );
        double slant = Math.Sqrt((HeightMm * HeightMm) + ((high - low) * (high - low))),
            inner = low * slant / (high - low),
            outer = inner + slant,
            sector = low * Turn / inner;
        FlatPanel flat = BottomPanel.Develop(plan.Planked, PanelOptions.Usual).Flat;
        Assert.True(flat.Verdict.Developable);
        Assert.Equal(low * Turn, flat.LowerEdge.FlatMm, 0.02);
        Assert.Equal(high * Turn, flat.UpperEdge.FlatMm, 0.02);
        double Diagonal(double a, double b) =>
            Math.Sqrt((a * a) + (b * b) - (2 * a * b * Math.Cos(sector)));
        Vec2 Corner(double u, double v) => flat.Map.At(u, v);
        (double from, double to) = (flat.Patch.UFrom, flat.Patch.UTo);
        Assert.Equal(Diagonal(inner, outer), Corner(from, 0).ChordTo(Corner(to, 1)), 0.02);
        Assert.Equal(Diagonal(inner, outer), Corner(to, 0).ChordTo(Corner(from, 1)), 0.02);
        Assert.Equal(slant, Corner(from, 0).ChordTo(Corner(from, 1)), 0.02);
        Assert.Equal(Diagonal(inner, inner), Corner(from, 0).ChordTo(Corner(to, 0)), 0.02);
        Assert.Empty(BottomLaws.Broken(plan));
    }

    private static readonly double Turn = 0.5;

    /// <summary>A level arc of half a radian, from forward to aft, bulging to starboard.</summary>
    private static List<(double X, double Y, double Z)> Arc(double radius, double z) =>
        [
            .. Enumerable
                .Range(0, 41)
                .Select(i => (i / 40.0 * Turn) - (Turn / 2))
                .Select(t => (radius * Math.Sin(t), (radius * Math.Cos(t)) - 7000, z)),
        ];
}
