using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking;

/// <summary>
/// The planking of a prismatic bottom against one worked out by clipping rectangles (nothing shared with the planking), and end cuts and bevels against solids
/// worked by hand.
/// </summary>
public sealed class PrismTests
{
    [Theory]
    [InlineData(20, 0, 45)]
    [InlineData(20, 30, 45)]
    [InlineData(12, 40, 60)]
    public void APrismIsPlankedAsClippingSays(double deadrise, double keelHalf, double angle)
    {
        var prism = new Prism(
            DeadriseDegrees: deadrise,
            KeelHalfBreadthMm: keelHalf,
            AngleDegrees: angle
        );
        BottomPlan plan = WholeBottomTests.Planned(PrismaticPlan.Build(prism).Job);
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            // The planking moves the master where a corner would be a sliver: clipping is told of the move.
            PlankLayerPlan should = PrismaticPlan
                .Build(prism with { MasterMm = prism.MasterMm + layer.MasterShiftMm })
                .PlankLayers.Single(l => l.Number == layer.Number);
            Assert.Equal(should.NeutralOffsetMm, layer.NeutralOffsetMm, 1e-9);
            Assert.Equal(should.AreaMm2, layer.AreaMm2, 1e-6 * should.AreaMm2);
            Assert.Equal(should.Starboard.Length, layer.Starboard.Length);
            foreach (
                (Plank a, Plank b) in should
                    .Starboard.Concat(should.Port)
                    .Zip(layer.Starboard.Concat(layer.Port))
            )
            {
                Assert.Equal(a.Id, b.Id);
                Assert.Equal(a.Ends.Select(e => e.At), b.Ends.Select(e => e.At));
                foreach ((PlankEnd e, PlankEnd f) in a.Ends.Zip(b.Ends))
                {
                    Assert.Equal(e.CutDegrees, f.CutDegrees, 0.01);
                    Assert.Equal(e.BevelDegrees, f.BevelDegrees, 0.01);
                }
            }
        }
    }

    [Fact]
    public void TheDefaultPrismAgreesToAHundredthOfAMillimetre()
    {
        BottomPlan exact = PrismaticPlan.Build();
        BottomPlan plan = WholeBottomTests.Planned(exact.Job);
        int compared = 0;
        foreach (
            (PlankLayerPlan should, PlankLayerPlan layer) in exact.PlankLayers.Zip(plan.PlankLayers)
        )
        {
            Assert.Equal(0, layer.MasterShiftMm, 1e-9);
            foreach ((Plank a, Plank b) in should.Starboard.Zip(layer.Starboard))
            {
                // Corners of the clipped shape must be among ours, in space and (from the net shape's own size) in the flat.
                foreach (Vec3 corner in a.Outline)
                {
                    Assert.True(
                        b.Outline.Min(p => p.ChordTo(corner)) < 0.01 + Shift(should, layer),
                        $"{a.Id}: {b.Outline.Min(p => p.ChordTo(corner))} mm"
                    );
                    compared++;
                }

                Assert.Equal(a.AreaMm2, b.AreaMm2, 0.5 + (1e-4 * a.AreaMm2));
                if (a.Kind != PlankKind.Corner)
                {
                    Assert.Equal(a.CutLengthMm, b.CutLengthMm, 0.02);
                    Assert.Equal(a.NetLengthMm, b.NetLengthMm, 0.02);
                }

                Assert.Equal(0, b.WidestGapMm, 1e-3);
                Assert.Equal(0, b.Bend.StrainPercent, 1e-6);
            }
        }

        Assert.True(compared > 200);
    }

    private static double Shift(PlankLayerPlan should, PlankLayerPlan layer) =>
        2e-3 * Math.Max(should.MasterNumber, layer.Starboard.Length - layer.MasterNumber);

    /// <summary>
    /// A plank of 9 mm at 45° on a plane bottom against a plumb keel side: cut 45°, saw tilt the deadrise whatever the plank's angle, the outer face the longer
    /// by t tan(deadrise) square to the cut: 3.275732 mm at 20°.
    /// </summary>
    [Theory]
    [InlineData(20, 45, 3.275732)]
    [InlineData(30, 45, 5.196152)]
    [InlineData(10, 60, 1.586943)]
    public void APlumbKeelGivesThePlanksEndTheDeadrise(
        double deadrise,
        double angle,
        double shiftMm
    )
    {
        BottomPlan plan = WholeBottomTests.Planned(
            PrismaticPlan.Build(new Prism(DeadriseDegrees: deadrise, AngleDegrees: angle)).Job
        );
        foreach (
            Plank plank in plan
                .PlankLayers.First()
                .Starboard.Where(p => p.Kind is PlankKind.Full or PlankKind.Master)
        )
        {
            PlankEnd? keel = plank.Ends.FirstOrDefault(e => e.At == PanelEdge.Lower);
            if (keel is null || plank.Ends.Length != 2)
            {
                continue;
            }

            Assert.Equal(deadrise, keel.BevelDegrees, 0.01);
            Assert.Equal(angle, keel.CutDegrees, 0.01);
            Vec2 along = (keel.NetLine[^1] - keel.NetLine[0]).Unit(),
                inward = new(along.Y, -along.X);
            Assert.Equal(shiftMm, inward.Dot(keel.InnerLine[0] - keel.OuterLine[0]), 1e-3);
        }
    }

    /// <summary>Heads forward, the same cut leans the other way; to port, everything is mirrored.</summary>
    [Fact]
    public void TheWayPlanksHeadTurnsTheCut()
    {
        BottomPlan plan = WholeBottomTests.Planned(PrismaticPlan.Build().Job);
        PlankLayerPlan inner = plan.PlankLayers.First(),
            outer = plan.PlankLayers.Last();
        Assert.Equal(45, Keel(inner.Starboard[inner.MasterNumber - 1]).CutDegrees, 0.01);
        Assert.Equal(135, Keel(outer.Starboard[outer.MasterNumber - 1]).CutDegrees, 0.01);
        Assert.Equal(135, Keel(inner.Port[inner.MasterNumber - 1]).CutDegrees, 0.01);
        Assert.Equal(20, Keel(outer.Port[outer.MasterNumber - 1]).BevelDegrees, 0.01);
    }

    /// <summary>
    /// A keel whose half-breadth grows by 1 in 20 going aft, on a plane bottom: the vertical side stands at atan(1/20) to the middle line in plan. Its unit normal
    /// outboard is (-1, 20, 0)/sqrt(401); with the bottom's normal (0, sin d, -cos d) the bevel is asin(20 sin d / sqrt(401)), and the cut line is their cross product.
    /// </summary>
    [Theory]
    [InlineData(15)]
    [InlineData(35)]
    public void AKeelThatWidensAftTurnsCutAndBevel(double deadrise)
    {
        double d = deadrise * Math.PI / 180;
        Job job = PrismaticPlan.Build(new Prism(DeadriseDegrees: deadrise, LengthMm: 4000)).Job;
        ImmutableArray<Station> stations = job.Offsets.Stations;
        OffsetLine keel = new(
            "keel edge",
            [],
            [.. stations.Select(s => (double?)((10 + (s.PositionMm / 20)) * Math.Tan(d)))],
            [.. stations.Select(s => (double?)(10 + (s.PositionMm / 20)))]
        );
        job = job with
        {
            Offsets = new(stations, [keel, job.Offsets.Find("chine")!]),
            Layers =
            [
                .. job.Layers.OfType<PlankLayerSpec>().Select(l => l with { MasterMm = 2000 }),
            ],
        };
        BottomPlan plan = WholeBottomTests.Planned(job);
        Vec3 normal = new(0, Math.Sin(d), -Math.Cos(d)),
            face = new Vec3(-1, 20, 0).Unit();
        double bevel = Math.Asin(face.Dot(normal)) * 180 / Math.PI;
        Vec3 cut = face.Cross(normal).Unit();
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            Plank master = layer.Starboard[layer.MasterNumber - 1];
            PlankEnd end = Keel(master);
            Assert.Equal(bevel, end.BevelDegrees, 0.01);

            // The plank's own direction from its two seams, which on a plane are straight and parallel to it.
            Vec3 own = (master.ForwardEdge.Seam[^1] - master.ForwardEdge.Seam[0]).Unit();
            double angle = Math.Acos(Math.Abs(cut.Dot(own))) * 180 / Math.PI;
            Assert.Equal(angle, Math.Min(end.CutDegrees, 180 - end.CutDegrees), 0.01);
            Assert.Equal(45, angle, 0.01);
        }
    }

    /// <summary>Square to plank, no bevel and both faces end on one line; and a sloping keel leaves the plumb side's bevel to the surface's own normal.</summary>
    [Fact]
    public void ASquareKeelSideNeedsNoBevel()
    {
        Job job = PrismaticPlan.Build().Job;
        BottomPlan plan = WholeBottomTests.Planned(
            job with
            {
                Hull = job.Hull with { KeelSide = KeelSide.SquareToPlank },
            }
        );
        PlankEnd end = Keel(plan.PlankLayers.First().Starboard[10]);
        Assert.Equal(0, end.BevelDegrees);
        Assert.Equal(end.NetLine, end.OuterLine);
    }

    /// <summary>
    /// A keel that rises 1 in 8 going forward under a plane bottom: normal (-p cos, ...) worked by hand. The plane holds the keel direction (8, 0, -1) and the slope
    /// (0, cos d, sin d); the plumb side's normal is (0, 1, 0), so the bevel is asin(n_y).
    /// </summary>
    [Fact]
    public void ASlopingKeelIsReckonedWith()
    {
        double d = 25 * Math.PI / 180;
        Job job = PrismaticPlan.Build(new Prism(DeadriseDegrees: 25, LengthMm: 4000)).Job;
        OffsetLine Raised(OffsetLine line) =>
            line with
            {
                HeightsMm =
                [
                    .. line.HeightsMm.Zip(job.Offsets.Stations, (h, s) => h - (s.PositionMm / 8)),
                ],
            };
        job = job with
        {
            Offsets = new(job.Offsets.Stations, [.. job.Offsets.Lines.Select(Raised)]),
            Layers =
            [
                .. job.Layers.OfType<PlankLayerSpec>().Select(l => l with { MasterMm = 2000 }),
            ],
        };
        Vec3 keel = new Vec3(8, 0, -1).Unit(),
            slope = new(0, Math.Cos(d), Math.Sin(d));
        Vec3 n = slope.Cross(keel).Unit();
        n = n.Z < 0 ? n : -n;
        PlankEnd end = Keel(WholeBottomTests.Planned(job).PlankLayers.First().Starboard[8]);
        Assert.Equal(Math.Asin(n.Y) * 180 / Math.PI, end.BevelDegrees, 0.01);
    }

    /// <summary>H3: constant deadrise over a rockered keel is a cylinder; every plank lies flat without strain and straight edges close.</summary>
    [Fact]
    public void ARockeredBottomOfOneDeadriseLiesFlatExactly()
    {
        double b = 20 * Math.PI / 180;
        double[] x = [.. Enumerable.Range(0, 13).Select(i => 500.0 * i)];
        double Keel(double at) => 300 * Math.Pow(at / 6000, 2);
        OffsetLine Line(string name, double y) =>
            new(
                name,
                [],
                [.. x.Select(a => (double?)(Keel(a) + (y * Math.Tan(b))))],
                [.. x.Select(_ => (double?)y)]
            );
        var planking = new PlankingJob(
            LengthUnit.Millimetre,
            new(
                [.. x.Select((a, i) => new Station($"{i}", a))],
                [Line("keel", 0), Line("chine", 1000)]
            ),
            new("keel", "chine", [], OffsetsAreTo.Inside, KeelSide.SquareToPlank),
            [PlankLayer.Of("one", 1e-6, 150, Heads.Aft, 45, null, Hold.Width, 7.5, 0.5, null)],
            EndRules.Default,
            BendLimits.Default
        );
        var job = new Job(planking);
        BottomPlan plan = WholeBottomTests.Planned(job);
        PlankLayerPlan layer = plan.PlankLayers.Single();

        // Area of one side with rulings of 1 / cos 20° along (0, cos b, sin b): 6.3944511536058 m² for a beam of 1 m.
        Assert.Equal(6394451.1536, layer.AreaMm2, 1);
        foreach (Plank plank in layer.Starboard)
        {
            Assert.True(
                plank.WidestGapMm < 0.01 && plank.WidestOverlapMm < 0.01,
                $"{plank.Id}: {plank.WidestGapMm}, {plank.WidestOverlapMm}"
            );
            Assert.True(plank.StrainMm < 1e-3);
            for (int i = 0; i < plank.Outline.Length; i += 7)
            {
                for (int k = i + 3; k < plank.Outline.Length; k += 11)
                {
                    Assert.Equal(
                        Developed(plank.Outline[i], b).ChordTo(Developed(plank.Outline[k], b)),
                        plank.FlatNet[i].ChordTo(plank.FlatNet[k]),
                        0.02
                    );
                }
            }
        }
    }

    /// <summary>The exact development of H3: u = z sin b along the ruling from the keel's, plus the distance out; v = ∫ sqrt(1 + z'² cos² b) dx.</summary>
    private static Vec2 Developed(Vec3 p, double b)
    {
        double k = 600.0 / (6000 * 6000) * Math.Cos(b),
            q = k * p.X;
        double v = ((q * Math.Sqrt(1 + (q * q))) + Math.Asinh(q)) / (2 * k);
        double keel = 300 * Math.Pow(p.X / 6000, 2);
        return new((p.Y / Math.Cos(b)) + (keel * Math.Sin(b)), v);
    }

    private static PlankEnd Keel(Plank plank) => plank.Ends.Single(e => e.At == PanelEdge.Lower);
}
