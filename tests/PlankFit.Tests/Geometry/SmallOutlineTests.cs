using PlankFit.Geometry.Primitives;

namespace PlankFit.Tests.Geometry;

/// <summary>The smallest outlines there are, and those that only touch themselves.</summary>
public sealed class SmallOutlineTests
{
    private static readonly Vec2[] Triangle = [new(0, 0), new(4, 0), new(0, 3)];

    [Fact]
    public void ATriangleIsSimpleAndALineIsNot()
    {
        Assert.True(PlanarShapes.IsSimple(Triangle));
        Assert.False(PlanarShapes.IsSimple(Triangle[..2]));
        Assert.False(PlanarShapes.IsSimple([new(0, 0), new(4, 0), new(8, 0)]));
    }

    [Fact]
    public void AnOutlineThatTouchesItselfIsNotSimple() =>
        Assert.False(
            PlanarShapes.IsSimple([new(0, 0), new(10, 0), new(10, 10), new(5, 0), new(0, 10)])
        );

    /// <summary>Half of 4 by 3, wherever it lies; a corner as given counts, so 1e9 mm away it is as exact as the corners are.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(-70, 31)]
    [InlineData(1e9, -1e9)]
    public void TheAreaOfATriangleIsHalfItsRectangle(double x, double y)
    {
        Vec2[] moved = [.. Triangle.Select(p => p + new Vec2(x, y))];
        Assert.Equal(6, FlatPolygon.Area(moved), 1e-9);
        Assert.Equal(-6, FlatPolygon.Area([.. moved.Reverse()]), 1e-9);
    }

    [Fact]
    public void TheHullOfFewPointsOrOfALineIsItsEnds()
    {
        Assert.Equal([new(1, 2)], ConvexHull.Of([new(1, 2), new(1, 2)]));
        Assert.Equal([new(0, 5), new(1, 2)], ConvexHull.Of([new(1, 2), new(0, 5)]));
        Assert.Equal(
            [new(0, 0), new(3, 6)],
            ConvexHull.Of([new(2, 4), new(0, 0), new(1, 2), new(3, 6)])
        );
        Assert.Equal(Triangle, ConvexHull.Of([new(1, 1), .. Triangle]));
    }

    /// <summary>A corner a thousandth nearer to a side than asked goes; one a thousandth further off stays.</summary>
    [Theory]
    [InlineData(0.499, 4)]
    [InlineData(0.501, 5)]
    public void ATipIsThinWhenItIsThinnerThanAsked(double thick, int corners)
    {
        Vec2[] tipped =
        [
            new(0, 0),
            new(10, 0),
            new(10, 10),
            new(20, 10 + thick),
            new(0, 10 + thick),
        ];
        Assert.Equal(corners, TidyOutline.Of(tipped, 0.5).Count);
    }
}
