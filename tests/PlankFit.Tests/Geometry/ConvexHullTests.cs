using CsCheck;
using NetTopologySuite.Geometries;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Tests.Geometry;

public sealed class ConvexHullTests
{
    /// <summary>Held to NetTopologySuite's, on points by chance, many of them in lines.</summary>
    [Fact]
    public void IsTheHullOfNetTopologySuite() =>
        Gen.Select(Gen.Int[0, 9], Gen.Int[0, 9])
            .Array[3, 30]
            .Sample(points =>
            {
                Vec2[] given = [.. points.Select(p => new Vec2(p.Item1, p.Item2))];
                NetTopologySuite.Geometries.Geometry outside = new GeometryFactory()
                    .CreateMultiPointFromCoords([.. given.Select(p => new Coordinate(p.X, p.Y))])
                    .ConvexHull();
                Vec2[] hull = [.. ConvexHull.Of(given)];
                if (outside is Polygon polygon)
                {
                    Assert.Equal(
                        polygon.Coordinates.Distinct().Select(c => new Vec2(c.X, c.Y)).Order(ByXY),
                        hull.Order(ByXY)
                    );
                    Assert.True(FlatPolygon.Area(hull) > 0);
                }
            });

    private static readonly IComparer<Vec2> ByXY = Comparer<Vec2>.Create(
        (a, b) => a.X != b.X ? a.X.CompareTo(b.X) : a.Y.CompareTo(b.Y)
    );
}
