using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Structure;
using PlankFit.Planking.Structure.Laminates;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking.Sheathing;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Structure;

/// <summary>Stiffness and mass of whole bottoms: a plane one by hand, the launch by its areas, and both units alike.</summary>
public sealed class StructurePlanTests
{
    /// <summary>On a plane bottom planks lie at the angle asked for, one skin against the other, and the stack is one laminate all along.</summary>
    [Theory]
    [InlineData(45)]
    [InlineData(55)]
    public void APrismHasTheAnglesThatWereAskedFor(double angle)
    {
        var prism = new Prism(DeadriseDegrees: 20, KeelHalfBreadthMm: 0, AngleDegrees: angle);
        Job job = PrismaticPlan.Build(prism).Job with
        {
            Timber = TimberSpec.Default with { Species = "douglas-fir" },
            Structure = new() { SpanMm = 250, PressureMPa = 0.02 },
        };
        BottomPlan plan = WholeBottomTests.Planned(job);
        StructurePlan structure = plan.Structure!;
        Assert.NotEmpty(structure.Stations);
        foreach (StationStiffness station in structure.Stations)
        {
            Assert.Equal(20, station.Deadrise, 0.01);
            foreach ((PlankLayerPlan layer, double at) in plan.PlankLayers.Zip(station.Angles))
            {
                double wanted = layer.Planks.Heads == Heads.Aft ? angle : 180 - angle;
                Assert.Equal(wanted, at, 0.05);
            }

            LaidUp lay = station.AsPlanned;
            Laminate byHand = new([
                .. plan.PlankLayers.Select(l => new Ply(
                    new(13400, 0.05 * 13400, 0.078 * 13400, 0.449),
                    l.Planks.ThicknessMm,
                    l.Planks.Heads == Heads.Aft ? angle : -angle
                )),
            ]);
            Assert.Equal(
                byHand.BetweenStringers,
                lay.Laminate.BetweenStringers,
                2e-3 * byHand.BetweenStringers
            );
            Assert.Equal(
                0.02 * Math.Pow(250, 4) / (384 * lay.Laminate.BetweenStringers),
                lay.DeflectionMm!.Value,
                1e-9
            );
        }
    }

    /// <summary>Where keel and chine end in one point at the stem too: all stations but that one, each with the deadrise that the table has there.</summary>
    [Theory]
    [InlineData("tender")]
    [InlineData("day-launch")]
    [InlineData("survey-launch")]
    public void EveryStationBetweenTheEndsIsReckoned(string hull)
    {
        Job job = SheathedJobs.Bare(DemoPlans.Of(hull).Job) with
        {
            Timber = TimberSpec.Default with { Species = "douglas-fir" },
            Structure = new() { SpanMm = 250, PressureMPa = 0.02 },
        };
        BottomPlan plan = WholeBottomTests.Planned(job);
        (OffsetLine keel, OffsetLine chine) = (
            job.Offsets.Named(job.Hull.Panel.Lower),
            job.Offsets.Named(job.Hull.Panel.Upper)
        );
        foreach (StationStiffness station in plan.Structure!.Stations)
        {
            int i = job.Offsets.Stations.IndexOf(
                job.Offsets.Stations.Single(s => s.Name == station.Station)
            );
            double deadrise = Math.Atan2(
                chine.HeightsMm[i]!.Value - keel.HeightsMm[i]!.Value,
                chine.HalfBreadthsMm[i]!.Value - keel.HalfBreadthsMm[i]!.Value
            );
            Assert.Equal(deadrise * 180 / Math.PI, station.Deadrise, 0.01);
        }

        Assert.InRange(
            plan.Structure.Stations.Length,
            job.Offsets.Stations.Length - 3,
            job.Offsets.Stations.Length
        );
        Assert.DoesNotContain(
            plan.Findings,
            f => f.Message.Contains("no stiffness", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void TheLeastDeadriseStandsFirst()
    {
        StructurePlan structure = Launch().Structure!;
        Assert.True(structure.Stations.Length > 5);
        Assert.Equal(
            structure.Stations.Select(s => s.Deadrise).Order(),
            structure.Stations.Select(s => s.Deadrise)
        );
    }

    /// <summary>Planks by their own areas, cloth by the surface, the whole by its parts; every stack of the same mass has it.</summary>
    [Fact]
    public void MassesAreAreasTimesDensities()
    {
        BottomPlan plan = Launch();
        StructurePlan structure = plan.Structure!;
        PlankLayerPlan inner = plan.PlankLayers.First();
        double density = plan.Timber!.Of(inner)!.KgPerCubicMetre!.Value,
            kg = 2 * inner.AreaMm2 * inner.Planks.ThicknessMm * density * 1e-9;
        Assert.Equal(kg, structure.Layers[0].Mass!.Kg, 1e-3 * kg);
        ClothSpec cloth = plan.Job.Cloths[0];
        LayerMass glass = structure.Layers.Single(l => l.Layer == "core cloth");
        Assert.Equal(
            glass.AreaMm2 / 1e6 * cloth.MassGsm / 1000 / cloth.GlassContent.Usual,
            glass.Mass!.Kg,
            1e-9
        );
        Assert.Equal(structure.Layers.Sum(l => l.Mass!.Kg), structure.Whole!.Kg, 1e-9);
        Assert.Equal(0, structure.Whole.Centre.Y, 1e-6);
        foreach (StationStiffness station in structure.Stations)
        {
            double[] same =
            [
                .. station
                    .Lays.Where(l => l.Name.StartsWith("the same mass", StringComparison.Ordinal))
                    .Select(l => l.Laminate.KgPerM2),
            ];
            Assert.Equal(2, same.Length);
            Assert.All(same, s => Assert.Equal(station.AsPlanned.Laminate.KgPerM2, s, 1e-9));
        }
    }

    [Fact]
    public void TheBillHasWhatTheOtherListsHave()
    {
        BottomPlan plan = Launch();
        StructurePlan structure = plan.Structure!;
        Assert.Equal(
            plan.Glue!.Totals.Sum(t => t.Order.Kg),
            structure.Bill.Where(r => r.Kind is "resin" or "hardener").Sum(r => r.Amount),
            1e-9
        );
        Assert.Equal(
            plan.Fastenings!.Totals.Sum(t => t.WithSpare),
            structure.Bill.Where(r => r.Kind == "fastenings").Sum(r => r.Amount)
        );
        Assert.All(structure.Bill, r => Assert.NotEmpty(r.Source));
        Assert.All(structure.Constants, c => Assert.NotEmpty(c.Source));
    }

    [Fact]
    public void MetricAndImperialAgree()
    {
        StructurePlan metric = GluedLaunch.Plan.Structure!,
            imperial = GluedLaunch.Imperial.Structure!;
        Assert.Equal(
            metric.Stations.Select(s => s.AsPlanned.Laminate.BetweenStringers),
            imperial.Stations.Select(s => s.AsPlanned.Laminate.BetweenStringers)
        );
        Assert.Equal(metric.Whole!.Kg, imperial.Whole!.Kg);
    }

    /// <summary>A mat on the wood is the first of its cloth's plies from the inside, one that faces outward the last; the glass is the same.</summary>
    [Fact]
    public void AMatLiesOnTheSideThatItWasSaidToLieOn()
    {
        (int At, double Kg) wood = Mat(Facing.ToTheWood),
            outward = Mat(Facing.Outward);
        Assert.Equal(wood.At + 2, outward.At);
        Assert.Equal(wood.Kg, outward.Kg, 1e-9);

        static (int, double) Mat(Facing side)
        {
            Job job = GluedLaunch.Job(3);
            Laminate laid = Planned(
                job with
                {
                    Cloths = [job.Cloths[0] with { MatGsm = 200 }],
                    Sheathing = [job.Sheathing[0] with { MatSide = side }],
                }
            ).Structure!.Governing!.AsPlanned.Laminate;
            // As stiff one way as the other.
            return (
                laid.Plies.ToList().FindIndex(p => p.Material.E1 == p.Material.E2),
                laid.KgPerM2
            );
        }
    }

    /// <summary>
    /// On a plane bottom a roll that is laid turned by five degrees has its threads at five degrees to the keel and square to that, the keel's side being where it lies on the
    /// flat cloth; one that is cut across the boat has its first set across.
    /// </summary>
    [Theory]
    [InlineData(5, CourseRule.Along, 0)]
    [InlineData(-5, CourseRule.Along, 0)]
    [InlineData(5, CourseRule.Across, 90)]
    public void TheRollTurnsTheThreads(double turned, CourseRule courses, double across)
    {
        Job job = SheathedJobs.Outside(
            PrismaticPlan.Build(new Prism(KeelHalfBreadthMm: 30)).Job,
            s =>
                s with
                {
                    Cloth = SheathedJobs.Woven.Name,
                    FirstAlong = new FirstLine.Straight(0.4, turned),
                    Courses = courses,
                }
        ) with
        {
            Timber = TimberSpec.Default with { Species = "douglas-fir" },
            Structure = new() { SpanMm = 250, PressureMPa = 0.02 },
        };
        BottomPlan plan = WholeBottomTests.Planned(job);
        FlatEdge keel = plan.Sheathing!.Layers[0].Sides[0].Edges.Of(PanelEdge.Lower)!;
        Vec2 aft = keel.Flat[^1] - keel.Flat[0];
        // On the cloth q grows towards the chine: what lies under the roll's length on it is turned towards the keel.
        double roll = -Math.Atan2(aft.Y, aft.X) * 180 / Math.PI;
        Assert.Equal(turned, roll, 0.01);
        double[] there =
        [
            .. plan.Structure!.Governing!.AsPlanned.Laminate.Plies.TakeLast(2)
                .Select(p => p.Degrees),
        ];
        Assert.Equal(0, Math.IEEERemainder(there[0] - roll - across, 180), 0.01);
        Assert.Equal(0, Math.IEEERemainder(there[1] - roll - across - 90, 180), 0.01);
        Assert.All(there, d => Assert.InRange(d, -90, 90));
    }

    [Fact]
    public void WithoutASpeciesThereIsNoStiffnessAndThatIsSaid()
    {
        Job job = GluedLaunch.Job(3) with { Timber = null };
        StructurePlan structure = Planned(job).Structure!;
        Assert.Empty(structure.Stations);
        Assert.Contains(
            structure.Findings,
            f => f.Message.Contains("no stiffness is reckoned", StringComparison.Ordinal)
        );
    }

    private static BottomPlan Launch() => GluedLaunch.Plan;

    private static BottomPlan Planned(Job job) => GluedLaunch.Of(job);
}
