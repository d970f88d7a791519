using PlankFit.Export.Views;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Planking;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Views;

/// <summary>A panel besides the bottom is opened out to either side: port above, starboard below, what is true across it true on the sheet.</summary>
public sealed class PanelSightTests
{
    /// <summary>The flat side goes up 600 mm for 240 mm abreast.</summary>
    private static readonly Vec3 Rise = new Vec3(0, 240, 600).Unit();

    private static readonly BottomPlan Topside = WholeBottomTests
        .Planned(JobReader.Read(WallSided.Job, "job.toml", WallSided.Offsets, "offsets.csv").Job!)
        .Others[0];

    private static readonly PlankLayerPlan Layer = Topside.PlankLayers.First();

    private static readonly PanelSight Sight = PanelSight.Of(Topside, Layer);

    [Fact]
    public void PortIsAboveAndStarboardBelow()
    {
        foreach (Vec3 p in Layer.Outline)
        {
            Vec2 starboard = Sight.At(p, Side.Starboard),
                port = Sight.At(p.MirroredInY(), Side.Port);
            Assert.True(starboard.Y < 0 && port.Y > 0, $"{starboard} {port}");
            Assert.Equal(-port.Y, starboard.Y, 1e-9);
            Assert.Equal(p.X, starboard.X);
            Assert.Equal(p.X, port.X);
            Assert.Equal(port, Sight.Of(p, Side.Port));
            Assert.Equal(starboard, Sight.Of(p, Side.Starboard));
        }
    }

    [Fact]
    public void WhatIsFurtherUpTheSideIsAsMuchFurtherOut()
    {
        Vec3 first = Layer.Outline[0];
        foreach (Vec3 p in Layer.Outline)
        {
            double up = Rise.Dot(p - first);
            Assert.Equal(
                up,
                Sight.Of(p, Side.Port).Y - Sight.Of(first, Side.Port).Y,
                1e-3 * Math.Max(1, Math.Abs(up))
            );
        }
    }

    /// <summary>The two lower edges are an eighth of the panel's height apart, about.</summary>
    [Fact]
    public void TheSidesLieApart()
    {
        double[] port = [.. Layer.Outline.Select(p => Sight.Of(p, Side.Port).Y)];
        Assert.Equal(0.06 * (port.Max() - port.Min()), port.Min(), 1e-6);
    }
}
