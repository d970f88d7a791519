using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking.Keel;

namespace PlankFit.Tests.Planking.AsBuilt;

/// <summary>What a tape reads along an edge, turned into what lies square across the planks: by the angle at that edge.</summary>
public sealed class DriftAtTheChineTests
{
    private const double Deadrise = 20;

    /// <summary>Half-breadth of the chine gained a millimetre aft.</summary>
    private const double Flare = 0.2;

    /// <summary>
    /// On a plane whose chine runs out from the keel by atan(0.2/cos 20°) = 12.0° planks that meet the keel at 45° meet the chine at 33.0° or 57.0°: 4 mm along
    /// either edge are 4 sin of its own angle across. The angle is taken from the seam and the edge in space.
    /// </summary>
    [Theory]
    [InlineData(PanelEdge.Lower)]
    [InlineData(PanelEdge.Upper)]
    public void TheCreepAcrossGoesByTheAngleAtItsOwnEdge(PanelEdge at)
    {
        const double crept = 4;
        Job job = Flared();
        PlankLayerPlan layer = WholeBottomTests.Planned(job).PlankLayers.First();
        Plank plank = layer.Starboard.First(p => p.Number == layer.MasterNumber + 2);
        ImmutableArray<Vec3> seam = plank.AfterEdge.Seam;
        Vec3 along =
            at == PanelEdge.Lower
                ? Vec3.UnitX
                : new Vec3(1, Flare, Flare * Math.Tan(Deadrise * Math.PI / 180)).Unit();
        double sine = along.Cross((seam[^1] - seam[0]).Unit()).Norm,
            leaves = Math.Atan(Flare / Math.Cos(Deadrise * Math.PI / 180)) * 180 / Math.PI,
            degrees = Math.Asin(sine) * 180 / Math.PI;
        Assert.Equal(
            at == PanelEdge.Lower ? 45
                : seam[^1].X > seam[0].X ? 45 - leaves
                : 45 + leaves,
            degrees,
            0.01
        );

        // A tape along a straight edge that leaves x by an angle reads more than x by its secant.
        double reading =
            ((at == PanelEdge.Lower ? seam[0].X : seam[^1].X) - job.Offsets.Stations[0].PositionMm)
            / along.X;
        double drawn = Drift(job, plank.Id, at, reading).Rows[0].PlannedMm;
        Assert.Equal(reading, drawn, 10.0);
        SeamCreep drift = Drift(job, plank.Id, at, drawn + crept);
        Assert.True(drift.GoingAft);
        Assert.True(drift.PlanksLeft > 5, $"{drift.PlanksLeft}");
        Assert.Equal(crept * sine, drift.AcrossMm, 0.01);
    }

    private static SeamCreep Drift(Job job, PlankId id, PanelEdge at, double mm) =>
        WholeBottomTests
            .Planned(job with { AsBuilt = AsBuiltSpec.None with { Seams = [new(id, at, mm)] } })
            .AsBuilt!.Drifts.Single(d => d.At == at);

    private static Job Flared()
    {
        Job job = PlaneBottom.Job(Deadrise, 0, 9, 1, OffsetsAreTo.Outside);
        double tb = Math.Tan(Deadrise * Math.PI / 180);
        double[] half = [.. job.Offsets.Stations.Select(s => 300 + (Flare * s.PositionMm))];
        OffsetLine chine = job.Offsets.Lines[1] with
        {
            HeightsMm = [.. half.Select(h => (double?)((h - PlaneBottom.KeelHalf) * tb))],
            HalfBreadthsMm = [.. half.Select(h => (double?)h)],
        };
        return job with
        {
            Offsets = job.Offsets with { Lines = [job.Offsets.Lines[0], chine] },
            Layers = [job.Layers[0]],
        };
    }
}
