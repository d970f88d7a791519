using MathNet.Numerics.Integration;
using MathNet.Numerics.Interpolation;
using PlankFit.Geometry.Cloth;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry.Cloth;

/// <summary>Nets of threads of fixed length against closed forms of surfaces that have them.</summary>
public sealed class ClothNetTests
{
    private const double R = 3000;

    private static readonly SphereSurface Sphere = new(R);

    /// <summary>
    /// On a sphere from a great circle: sin g = sin²(t/R) at the distance t from it, and the cloth's own width to there is the integral of
    /// dt/√(1 + sin²(t/R)). Derived from the net's equation, on which g depends by t alone.
    /// </summary>
    [Theory]
    [InlineData(500, 1.577066, 497.726107)]
    [InlineData(1000, 6.145656, 982.714499)]
    [InlineData(1500, 13.288173, 1446.047651)]
    public void ASphereFromAGreatCircle(double t, double degrees, double width)
    {
        Assert.Equal(degrees, Degrees(Math.Asin(Math.Pow(Math.Sin(t / R), 2))), 1e-6);
        Assert.Equal(
            width,
            GaussLegendreRule.Integrate(
                s => 1 / Math.Sqrt(1 + Math.Pow(Math.Sin(s / R), 2)),
                0,
                t,
                40
            ),
            1e-6
        );

        ClothNet net = OnSphere(25);
        double fine = ShearAt(net, t),
            coarse = ShearAt(OnSphere(50), t);
        Assert.Equal(degrees, fine, 5e-4);
        // Second order: what is left over by half the mesh is a quarter, and without it nothing is.
        Assert.Equal(degrees, fine + ((fine - coarse) / 3), 3e-6);
        Vec2 flat = net.FlatOf(new(0, t / R))!.Value;
        Assert.Equal(0, flat.X, 1e-6);
        Assert.Equal(width, flat.Y, 0.02);
    }

    /// <summary>On a surface of revolution from the parallel of radius r0: sin g = 1 − (r/r0)², width the integral of dt/√(2 − (r/r0)²).</summary>
    [Theory]
    [InlineData(200, 7.405390, 193.872662)]
    [InlineData(400, 14.411772, 377.299311)]
    public void AConeFromAParallel(double towardsApex, double degrees, double width)
    {
        const double slant = 3000;
        double half = 25 * Math.PI / 180,
            around = slant * Math.Sin(half);
        var ground = new ClothGround(
            new ConeSurface(half),
            at => Math.Max(Math.Abs(at.U * around) - 1500, Math.Abs(at.V - slant) - 450)
        );
        var line = LaidLine.Along(ground, s => new(s, slant), -1500 / around, 1500 / around, 100);
        double shift = 1500;
        // The apex lies to the right of the parallel as its angle grows, seen from outside.
        foreach (int left in new[] { -1, 1 })
        {
            ClothNet net = ClothLaying.Along(ground, line, left, 10);
            double side = net.FlatOf(new(0, slant - towardsApex))!.Value.Y;
            Assert.Equal(width, Math.Abs(side), 0.01);
            Assert.Equal(
                degrees,
                Interpolated(
                    net.OnGround.Where(m =>
                            Math.Abs(m.Middle.X - shift) < 8
                            && (m.Middle.Y > 0) == (side > 0)
                            && Math.Abs(m.At.U) * around < 12
                        )
                        .Select(m => (slant - m.At.V, m.ShearDegrees)),
                    towardsApex
                ),
                3e-3
            );
        }
    }

    /// <summary>On flat ground the shear anywhere is by how much the line has turned between the feet of its two threads, at p − q and p + q.</summary>
    [Fact]
    public void FlatGroundFromAnyLine()
    {
        var ground = new ClothGround(
            new PlaneSurface(Vec3.Zero, Vec3.UnitX, Vec3.UnitY),
            at => Math.Max(Math.Abs(at.U - 1000) - 1000, Math.Abs(at.V - 300) - 500)
        );
        // A parabola; its slope and length in closed form.
        const double bend = 2e-4;
        double Slope(double x) => Math.Atan(bend * (x - 1000));
        double Length(double x)
        {
            double s = bend * (x - 1000);
            return (Math.Asinh(s) + (s * Math.Sqrt(1 + (s * s)))) / (2 * bend);
        }

        var line = LaidLine.Along(
            ground,
            x => new(x, bend / 2 * (x - 1000) * (x - 1000)),
            0,
            2000,
            100
        );
        double XAt(double p) =>
            MathNet.Numerics.RootFinding.Brent.FindRoot(
                x => Length(x) - Length(0) - p,
                -500,
                2500,
                1e-10
            );
        ClothNet net = ClothLaying.Along(ground, line, 1, 20);
        ClothMesh[] judged =
        [
            .. net.OnGround.Where(m =>
                m.Middle.X - Math.Abs(m.Middle.Y) > 20
                && m.Middle.X + Math.Abs(m.Middle.Y) < line.To - 120
            ),
        ];
        Assert.True(judged.Length > 2000);
        Assert.All(
            judged,
            m =>
            {
                double turned =
                    Slope(XAt(m.Middle.X + Math.Abs(m.Middle.Y)))
                    - Slope(XAt(m.Middle.X - Math.Abs(m.Middle.Y)));
                double exact = Degrees(turned) * Math.Sign(m.Middle.Y);
                Assert.Equal(exact, m.ShearDegrees, 3e-3);
                Assert.Equal(exact, m.TurningDegrees, 3e-3);
                Assert.Equal(0, m.BulgeDegrees, 1e-9);
            }
        );
    }

    /// <summary>
    /// On a sphere from a point, its first threads two great circles: s w'' + w' = −sin w with s = uv/R², w(0) = π/2, so 14.274425 degrees at u = v = 1500.
    /// </summary>
    [Fact]
    public void ASphereFromAPoint()
    {
        double[] got = [.. new[] { 100.0, 50, 25 }.Select(FromPoint)];
        Assert.Equal(14.27402, got[0], 2e-5);
        Assert.Equal(14.27432, got[1], 2e-5);
        Assert.Equal(14.27440, got[2], 2e-5);
    }

    /// <summary>A developable from a straight course: no shear, and places as they lie once it is rolled out.</summary>
    [Fact]
    public void ACylinderFromAStraightCourse()
    {
        const double radius = 1200;
        var ground = new ClothGround(
            new CylinderSurface(radius),
            at => Math.Max(Math.Abs(at.U) - 1500, Math.Abs(at.V * radius) - 900)
        );
        double turned = 30 * Math.PI / 180;
        var line = LaidLine.Straight(
            ground,
            new(0, 0),
            new(Math.Cos(turned), 0, Math.Sin(turned)),
            100
        );
        int left = -1;
        ClothNet net = ClothLaying.Along(ground, line, left, 20);
        ClothMesh most = net.OnGround.MaxBy(m => Math.Abs(m.ShearDegrees));
        Assert.True(Math.Abs(most.ShearDegrees) < 3e-4, $"{most}");
        Vec2 flat = new(-13 * 20 * Math.Sqrt(2), 40 * 20 / Math.Sqrt(2));
        Assert.Equal(-367.6955, flat.X, 1e-4);
        Assert.Equal(565.6854, flat.Y, 1e-4);
        Uv at = net.GroundOf(flat)!.Value;
        Assert.Equal(-601.276, at.U, 8e-3);
        Assert.Equal(306.050, at.V * radius, 8e-3);
        Vec2 back = net.FlatOf(at)!.Value;
        Assert.Equal(0, back.ChordTo(flat), 1e-6);
    }

    private static double FromPoint(double mesh)
    {
        var ground = new ClothGround(
            Sphere,
            at =>
            {
                SurfacePoint p = Sphere.At(at.U, at.V);
                double angle = Math.Acos(p.P.X / R);
                return (angle * R) - 2250;
            }
        );
        var thread = LaidLine.Straight(ground, new(0, 0), new(0, 1, 1), 300);
        ClothNet net = ClothLaying.FromThread(ground, ClothWeave.Diagonal, thread, 1, mesh);
        int n = (int)Math.Round(1500 / mesh);
        return Math.Abs(net.ShearAtCrossing(n, n)!.Value);
    }

    private static ClothNet OnSphere(double mesh)
    {
        var ground = new ClothGround(
            Sphere,
            at => Math.Max(Math.Abs(at.U * R) - 1900, Math.Abs(at.V * R) - 1700)
        );
        var line = LaidLine.Straight(ground, new(0, 0), Vec3.UnitY, 200);
        int left = Sphere.At(0, 0).Left(Vec3.UnitY).Z > 0 ? 1 : -1;
        return ClothLaying.Along(ground, line, left, mesh);
    }

    /// <summary>The shear at a distance from the equator, by its meshes on the middle meridian.</summary>
    private static double ShearAt(ClothNet net, double t) =>
        Interpolated(
            net.OnGround.Where(m =>
                    Math.Abs(m.Middle.X) < net.MeshMm / 4 && m.Middle.Y > -2 * net.MeshMm
                )
                .Select(m => (Math.Asin(m.P.Z / m.P.Norm) * R, m.ShearDegrees)),
            t
        );

    private static double Interpolated(IEnumerable<(double At, double Value)> points, double at)
    {
        (double At, double Value)[] near = [.. points.OrderBy(p => Math.Abs(p.At - at)).Take(6)];
        return NevillePolynomialInterpolation
            .Interpolate([.. near.Select(p => p.At)], [.. near.Select(p => p.Value)])
            .Interpolate(at);
    }

    private static double Degrees(double rad) => rad * 180 / Math.PI;
}
