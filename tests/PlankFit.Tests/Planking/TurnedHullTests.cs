using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Geometry;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking;

/// <summary>A hull turned about a level line across it (another trim) gives the same planks in the flat; only plumb keel sides know what is plumb.</summary>
public sealed class TurnedHullTests
{
    [Theory]
    [InlineData(2)]
    [InlineData(-3)]
    public void TurningTheHullChangesOnlyTheFrame(double degrees)
    {
        Job job = LoftTests.Demo("survey-launch");
        job = job with
        {
            Hull = job.Hull with { KeelSide = KeelSide.SquareToPlank },
            Ends = EndRules.Default,
            Layers = [job.Layers.OfType<PlankLayerSpec>().First()],
            Keel = KeelSpec.None,
        };
        PlankLayerPlan first = WholeBottomTests.Planned(job).PlankLayers.Single();

        // The same place on the layer for both masters: mid-bottom at a u halfway, in each frame's own x.
        LoftedSurface hull = HullLoft.Build(job.Offsets, job.Hull.Panel).Surface;
        double u = (hull.UFrom + hull.UTo) / 2;
        Vec3 middle = first.Surface.At(u, hull.UpperV(u) / 2).P;
        double a = degrees * Math.PI / 180;
        double X(double x, double z) => (x * Math.Cos(a)) + (z * Math.Sin(a));
        double Z(double x, double z) => (z * Math.Cos(a)) - (x * Math.Sin(a));
        OffsetLine Turned(OffsetLine line)
        {
            (double X, double Z)[] at =
            [
                .. job.Offsets.Stations.Select(
                    (s, i) =>
                        (
                            line.PositionsMm.IsDefaultOrEmpty
                                ? s.PositionMm
                                : line.PositionsMm[i] ?? s.PositionMm,
                            line.HeightsMm[i]!.Value
                        )
                ),
            ];
            return line with
            {
                PositionsMm = [.. at.Select(p => (double?)X(p.X, p.Z))],
                HeightsMm = [.. at.Select(p => (double?)Z(p.X, p.Z))],
            };
        }

        Job Mastered(Job j, double x) =>
            j with
            {
                Layers = [((PlankLayerSpec)j.Layers[0]) with { MasterMm = x }],
            };
        Job turned = job with
        {
            Offsets = job.Offsets with { Lines = [.. job.Offsets.Lines.Select(Turned)] },
        };
        PlankLayerPlan here = WholeBottomTests
                .Planned(Mastered(job, middle.X))
                .PlankLayers.Single(),
            there = WholeBottomTests
                .Planned(Mastered(turned, X(middle.X, middle.Z)))
                .PlankLayers.Single();
        Assert.Equal(here.Starboard.Length, there.Starboard.Length);
        Assert.Equal(here.AreaMm2, there.AreaMm2, 1e-3);
        Assert.Equal(0, here.MasterShiftMm, 1e-9);
        foreach ((Plank p, Plank q) in here.Starboard.Zip(there.Starboard))
        {
            Assert.Equal(p.NetLengthMm, q.NetLengthMm, 0.01);
            Assert.Equal(p.CutLengthMm, q.CutLengthMm, 0.01);
            Assert.Equal(p.WidestMm, q.WidestMm, 0.01);
            foreach ((PlankEnd e, PlankEnd f) in p.Ends.Zip(q.Ends))
            {
                Assert.Equal(e.At, f.At);
                Assert.Equal(e.CutDegrees, f.CutDegrees, 0.01);
                Assert.Equal(e.BevelDegrees, f.BevelDegrees, 0.01);
            }
        }
    }

    /// <summary>Every plank of the demo hulls that is checked with a tape and has both seams has its diagonal.</summary>
    [Theory]
    [InlineData("survey-launch")]
    [InlineData("pilot-skiff")]
    [InlineData("tender")]
    public void DemoHullsHaveEveryDiagonal(string hull) =>
        Assert.All(
            DemoPlans.Of(hull).PlankLayers.SelectMany(l => l.Checks),
            c =>
                Assert.Equal(c.Forward is not null && c.After is not null, c.DiagonalMm is not null)
        );
}
