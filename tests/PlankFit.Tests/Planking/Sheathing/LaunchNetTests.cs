using PlankFit.Geometry.Cloth;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Sheathing;

/// <summary>Nets on the launch's own lofted surface.</summary>
public sealed class LaunchNetTests
{
    private static readonly Lazy<LoftedSurface> Launch = new(() =>
        HullLoft
            .Build(DemoTables.Read("survey-launch"), Panel.Bottom("keel edge", "chine", []))
            .Surface
    );

    /// <summary>
    /// The roll pressed along the keel: worked out outside this code by a net of its own (h = 20) and by the turning of the keel's edge between the feet and the
    /// integral of the curvature over the triangle.
    /// </summary>
    [Theory]
    [InlineData(1465.43, 518.72, 480.09, 5.0635, 5.5108, -0.4472)]
    [InlineData(2292.67, 713.49, 406.61, 3.0492, 3.5036, -0.4544)]
    public void TheShearAlongTheKeel(
        double x,
        double y,
        double z,
        double shear,
        double turning,
        double bulge
    )
    {
        ClothNet net = AlongKeel(20);
        Assert.Null(net.Stop);
        Assert.True(
            ClosestPoint.TryFind(
                Launch.Value,
                new Vec3(x, y, z),
                new(x, 0.5),
                1e-9,
                out ClosestPoint.Result at
            )
        );
        Assert.True(Math.Abs(at.HeightMm) < 0.02);
        ClothShear found = net.ShearAt(net.FlatOf(at.Uv)!.Value)!.Value;
        Assert.Equal(shear, found.Degrees, 2e-3);
        Assert.Equal(turning, found.Turning, 2e-3);
        Assert.Equal(bulge, found.Bulge, 2e-3);
        Assert.Equal(found.Degrees, found.Turning + found.Bulge, 1e-3);
    }

    /// <summary>Turning and curvature together are the shear of every mesh whose threads both come from the first line.</summary>
    [Fact]
    public void BothPartsTogetherAreTheShear()
    {
        ClothNet net = AlongKeel(20);
        ClothMesh[] meshes = [.. net.OnGround];
        Assert.True(meshes.Length > 12_000);
        double Off(ClothMesh m) => Math.Abs(m.ShearDegrees - m.TurningDegrees - m.BulgeDegrees);
        // Where the line runs out into a straight course its turning ends within a mesh.
        double Foot(ClothMesh m) => m.Middle.X - m.Middle.Y;
        Assert.True(meshes.Max(Off) < 0.1);
        Assert.True(meshes.Where(m => Math.Abs(Foot(m)) > 80).Max(Off) < 5e-3);
    }

    /// <summary>Along a straight course through mid-bottom the same cloth lies almost flat.</summary>
    [Fact]
    public void MidBottomHardlyShears()
    {
        double u = Middle;
        SurfacePoint p = Launch.Value.At(u, 0.5);
        var line = LaidLine.Straight(Ground, new(u, 0.5), p.Du, 60);
        ClothNet net = ClothLaying.Along(Ground, line, -1, 20);
        Assert.Null(net.Stop);
        Assert.InRange(net.OnGround.Max(m => Math.Abs(m.ShearDegrees)), 0.15, 0.25);
    }

    private static double Middle => (Launch.Value.UFrom + Launch.Value.UTo) / 2;

    private static ClothGround Ground =>
        new(
            Launch.Value,
            at =>
                Math.Max(
                    Math.Max(Launch.Value.UFrom - at.U, at.U - Launch.Value.UTo),
                    Math.Max(-at.V, at.V - 1)
                        * Launch.Value.At(Math.Clamp(at.U, 0, 8000), 0.5).Dv.Norm
                )
        );

    private static ClothNet AlongKeel(double mesh)
    {
        LoftedSurface hull = Launch.Value;
        var keel = LaidLine.Along(Ground, u => new(u, 0), hull.UFrom, hull.UTo, 3 * mesh);
        return ClothLaying.Along(Ground, keel, -1, mesh);
    }
}
