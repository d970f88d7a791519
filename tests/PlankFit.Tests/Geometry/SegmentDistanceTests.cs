using CsCheck;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Tests.Geometry;

/// <summary>How near two stretches come: by hand where it is plain, and by a search over both parameters.</summary>
public sealed class SegmentDistanceTests
{
    [Theory]
    [InlineData(0, 0, 0, 10, 0, 0, 3, -4, 7, 3, 4, 7, 7)] // crossing, seven above
    [InlineData(0, 0, 0, 10, 0, 0, 3, 2, 0, 3, 9, 0, 2)] // an end above the other's inside
    [InlineData(3, 2, 0, 3, 9, 0, 0, 0, 0, 10, 0, 0, 2)] // the same, exchanged
    [InlineData(0, 0, 0, 10, 0, 0, 13, 4, 0, 20, 90, 0, 5)] // end to end
    [InlineData(0, 0, 0, 10, 0, 0, 4, 3, 4, 20, 3, 4, 5)] // parallel and abreast
    [InlineData(0, 0, 0, 10, 0, 0, 25, 0, 0, 14, 0, 0, 4)] // in one line
    [InlineData(6, 8, 0, 6, 8, 0, 0, 0, 0, 10, 0, 0, 8)] // the first is a point
    [InlineData(0, 0, 0, 10, 0, 0, -3, 0, 4, -3, 0, 4, 5)] // the second is one
    public void IsWhatAHandFinds(
        double ax,
        double ay,
        double az,
        double bx,
        double by,
        double bz,
        double cx,
        double cy,
        double cz,
        double dx,
        double dy,
        double dz,
        double mm
    ) =>
        Assert.Equal(
            mm,
            SegmentDistance.Between(
                new(ax, ay, az),
                new(bx, by, bz),
                new(cx, cy, cz),
                new(dx, dy, dz)
            ),
            12
        );

    /// <summary>
    /// The square of the distance is convex in both parameters: no pair of points may be nearer than what is said, and the nearest by
    /// thirds of thirds comes as near.
    /// </summary>
    [Fact]
    public void NoPairOfPointsIsNearer()
    {
        var point = Gen.Select(
            Gen.Double[-100, 100],
            Gen.Double[-100, 100],
            Gen.Double[-100, 100],
            (x, y, z) => new Vec3(x, y, z)
        );
        Gen.Select(point, point, point, point)
            .Sample(
                (a, b, c, d) =>
                {
                    double Apart(double s, double t) =>
                        (a + (s * (b - a))).ChordTo(c + (t * (d - c)));
                    double least = Least(s => Least(t => Apart(s, t)));
                    Assert.Equal(least, SegmentDistance.Between(a, b, c, d), 1e-5);
                },
                iter: 60
            );
    }

    /// <summary>The least value of a convex function on [0, 1].</summary>
    private static double Least(Func<double, double> f)
    {
        double low = 0,
            high = 1;
        for (int i = 0; i < 60; i++)
        {
            double third = (high - low) / 3;
            (low, high) =
                f(low + third) < f(high - third) ? (low, high - third) : (low + third, high);
        }

        return Math.Min(f(low), f(high));
    }
}
