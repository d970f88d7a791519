using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Strips;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>
/// Places so far from a strip's line that a step along it is much shorter there: g = cos(t/R) on a sphere about its
/// equator. With the stretch reckoned with, the search comes nearer by a factor at every step, and is done well before its last.
/// </summary>
public sealed class FermiFarOutTests
{
    [Theory]
    [InlineData(0.4)]
    [InlineData(0.8)]
    [InlineData(-0.8)]
    [InlineData(-1.1)]
    public void OnASphereTheyAreFound(double latitude)
    {
        const double radius = 500;
        var sphere = new SphereSurface(radius);
        var strip = new FermiStrip(
            GeodesicTracing.Trace(sphere, new(0, 0), Vec3.UnitY, 0, 600, 1e-9),
            10
        );
        Uv place = new(0.6, latitude);
        Fermi found = strip.Find(
            place,
            sphere.At(place.U, place.V).P,
            new(radius * 0.55, radius * latitude * 0.97),
            1e-9
        );
        Assert.Equal(radius * 0.6, found.S, 1e-4);
        Assert.Equal(radius * latitude, found.T, 1e-4);
    }
}
