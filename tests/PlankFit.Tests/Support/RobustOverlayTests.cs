using NetTopologySuite.Geometries;

namespace PlankFit.Tests.Support;

/// <summary>What the laws of plans judge overlaps by.</summary>
public sealed class RobustOverlayTests
{
    /// <summary>Drawn by chance: two halves of a board, parted by a saw that takes nothing.</summary>
    [Fact]
    public void TwoTrianglesOnEitherSideOfALineHaveNothingInCommon()
    {
        Polygon below = Triangle(
                (1061, 246.97746558342402),
                (322.6015016809181, 97.97674418604652),
                (1382.601501680918, 97.97674418604652)
            ),
            above = Triangle(
                (322.60150168091803, 97.97674418604652),
                (1061, 246.97746558342402),
                (1, 246.97746558342402)
            );
        Assert.InRange(below.Common(above).Area, 0, 1e-3);
        Assert.Equal(below.Area, below.Common(below).Area, 1e-2);
    }

    private static Polygon Triangle(params (double X, double Y)[] at) =>
        new(new LinearRing([.. at.Append(at[0]).Select(p => new Coordinate(p.X, p.Y))]));
}
