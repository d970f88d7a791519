using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Tests.Geometry;

/// <summary>A trace may be asked for its own ends though their s was rounded on the way: by a millionth of a millimetre, and no more.</summary>
public sealed class TraceEndTests
{
    [Fact]
    public void AHairPastTheEndsIsAllowedAndNoMore()
    {
        Geodesic line = GeodesicTracing.Trace(
            new CylinderSurface(2000),
            new(0, 0),
            new(1, 1, 0),
            300,
            500,
            1e-6
        );
        Assert.Equal(-300, line.From, 1e-9);
        Assert.Equal(500, line.To, 1e-9);
        foreach ((double end, int outward) in new[] { (line.From, -1), (line.To, 1) })
        {
            Vec3 there = line.Under(end).P;
            Assert.InRange(line.Under(end + (outward * 0.9e-6)).P.ChordTo(there), 0, 1e-6);
            Assert.Throws<ArgumentOutOfRangeException>(() => line.At(end + (outward * 1.1e-6)));
        }
    }

    /// <summary>Where nothing bends, steps are as long as they may be: a hundred millimetres to begin with, then four hundred, then what is left.</summary>
    [Theory]
    [InlineData(60, 1)]
    [InlineData(100, 1)]
    [InlineData(450, 2)]
    [InlineData(3000, 9)]
    public void OnAPlaneATraceTakesFewSteps(double length, int steps)
    {
        var plane = new PlaneSurface(Vec3.Zero, new(1, 0.2, 0), new(0, 1, 0.5));
        Geodesic ahead = GeodesicTracing.Trace(plane, new(0, 0), new(3, 4, 1), 0, length, 1e-6),
            both = GeodesicTracing.Trace(plane, new(0, 0), new(3, 4, 1), length, length, 1e-6);
        Assert.Equal(steps, ahead.Steps);
        Assert.Equal(2 * steps, both.Steps);
        Assert.Equal(length, ahead.Under(length).P.ChordTo(ahead.Under(0).P), 1e-9);
        Assert.Equal(2 * length, both.Under(length).P.ChordTo(both.Under(-length).P), 1e-9);
    }
}
