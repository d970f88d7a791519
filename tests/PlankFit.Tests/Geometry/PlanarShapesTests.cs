using PlankFit.Geometry.Primitives;

namespace PlankFit.Tests.Geometry;

/// <summary>Flat outlines: what crosses itself is not simple, and what lies outside is told with its distance.</summary>
public sealed class PlanarShapesTests
{
    private static readonly Vec2[] Square = [new(0, 0), new(10, 0), new(10, 10), new(0, 10)];

    [Fact]
    public void ABowTieIsNotSimple()
    {
        Assert.True(PlanarShapes.IsSimple(Square));
        Assert.False(PlanarShapes.IsSimple([new(0, 0), new(10, 10), new(10, 0), new(0, 10)]));
    }

    [Fact]
    public void TheFurthestPointOutsideIsTold()
    {
        (Vec2? point, double mm) = PlanarShapes.FurthestOutside(
            Square,
            [new(5, 5), new(10, 3), new(12, 5), new(13, 14)]
        );
        Assert.Equal(new Vec2(13, 14), point);
        Assert.Equal(5, mm, 12);
        Assert.Equal((null, 0), PlanarShapes.FurthestOutside(Square, [new(0, 0), new(9.99, 5)]));
    }
}
