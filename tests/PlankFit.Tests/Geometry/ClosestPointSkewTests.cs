using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>Parameter lines that cross at a sharp angle do not lead the search for the closest point astray.</summary>
public sealed class ClosestPointSkewTests
{
    /// <summary>On a plane Newton's first step lands, whatever the angle between its lines.</summary>
    [Theory]
    [InlineData(90)]
    [InlineData(30)]
    [InlineData(-20)]
    [InlineData(165)]
    public void OnAPlaneTheFirstStepLands(double degrees)
    {
        double angle = degrees * Math.PI / 180;
        var plane = new Counted(
            new PlaneSurface(
                new(7, 8, 9),
                new(1, 0, 0),
                new(2 * Math.Cos(angle), 2 * Math.Sin(angle), 0)
            )
        );
        Assert.True(
            ClosestPoint.TryFind(
                plane,
                plane.At(40, 30).P + new Vec3(0, 0, 25),
                new(-300, 500),
                1e-9,
                out ClosestPoint.Result found
            )
        );
        Assert.Equal(40, found.Uv.U, 1e-9);
        Assert.Equal(30, found.Uv.V, 1e-9);
        Assert.Equal(degrees > 0 ? 25 : -25, found.HeightMm, 1e-9);
        Assert.Equal(3, plane.Asked);
    }

    /// <summary>On a sheared sphere as well, near its centre, where the second form counts.</summary>
    [Fact]
    public void OnALeaningSphereItIsFound()
    {
        var sphere = new ShearedSurface(new SphereSurface(3000), 3);
        SurfacePoint foot = sphere.At(0.2, 0.3);
        Assert.True(
            ClosestPoint.TryFind(
                sphere,
                foot.P - (1500 * foot.Normal),
                new(0.23, 0.28),
                1e-9,
                out ClosestPoint.Result found
            )
        );
        Assert.Equal(-1500, found.HeightMm, 1e-8);
        Assert.Equal(0.2, found.Uv.U, 1e-9);
        Assert.Equal(0.3, found.Uv.V, 1e-9);
    }

    private sealed class Counted(ISurface surface) : ISurface
    {
        public int Asked { get; private set; }

        public SurfacePoint At(double u, double v)
        {
            Asked++;
            return surface.At(u, v);
        }
    }
}
