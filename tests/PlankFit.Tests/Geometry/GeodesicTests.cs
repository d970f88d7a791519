using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Geometry;

/// <summary>
/// Geodesics against closed forms (cylinder, cone, sphere, hyperbolic paraboloid, torus by Clairaut, helicoid; values computed outside this code at 25 digits and
/// more), and on real hulls against a stepper in space that shares nothing with them. Ends within 0.01 mm in 3 m.
/// </summary>
public sealed class GeodesicTests
{
    private const double EndMm = 0.01;
    private const double Degree = Math.PI / 180;

    [Fact]
    public void OnACylinderItIsAHelix()
    {
        var cylinder = new CylinderSurface(2000);
        Geodesic g = From(cylinder, new(0, 0), 40 * Degree, 3000);
        double angle = 3000 * Math.Sin(40 * Degree) / 2000;
        Near(
            new(3000 * Math.Cos(40 * Degree), 2000 * Math.Cos(angle), 2000 * Math.Sin(angle)),
            g,
            3000
        );
        Assert.Equal(1, g.At(3000).A, 1e-9);
        Assert.Equal(3000, g.At(3000).B, 1e-6);
    }

    [Fact]
    public void OnAConeItIsStraightInTheFlat()
    {
        var cone = new ConeSurface(25 * Degree);
        SurfacePoint p = cone.At(0, 2000);
        Vec3 d = (Math.Cos(60 * Degree) * p.Dv.Unit()) + (Math.Sin(60 * Degree) * p.Du.Unit());
        Geodesic g = GeodesicTracing.Trace(cone, new(0, 2000), d, 0, 2500, 1e-5);
        Near(new(295.907746, 1623.632681, 3539.245050), g, 2500);
        Assert.Equal(3905.1248379533, g.At(2500).Uv.V, 1e-3);
        Assert.Equal(1.3905244474, g.At(2500).Uv.U, 1e-6);
    }

    [Fact]
    public void OnASphereItIsAGreatCircle()
    {
        var sphere = new SphereSurface(3000);
        SurfacePoint p = sphere.At(0.3, 0.2);
        Vec3 d = p.UnitTangent(p.Du.Unit() + (0.7 * p.Dv.Unit()));
        Geodesic g = GeodesicTracing.Trace(sphere, new(0.3, 0.2), d, 0, 3000, 1e-5);
        Near((Math.Cos(1) * p.P) + (3000 * Math.Sin(1) * d), g, 3000);
        Assert.Equal(Math.Cos(1), g.At(3000).A, 1e-7);
        Assert.Equal(2524.412954, g.At(3000).B, 1e-3);
    }

    [Fact]
    public void TheAxisOfAHyparIsOneWithItsJacobiFields()
    {
        Geodesic g = From(new HyparSurface(1.5e-4), new(0, 0), 0, 3000);
        Near(new(3000, 0, 0), g, 3000);
        Assert.Equal(1.0965856099730653, g.At(3000).A, 1e-7);
        Assert.Equal(3091.303536786642, g.At(3000).B, 1e-3);
    }

    [Fact]
    public void OnATorusClairautHolds()
    {
        var torus = new TorusSurface(3000, 1200);
        SurfacePoint p = torus.At(0.2, 0);
        Vec3 d = (Math.Cos(35 * Degree) * p.Dv.Unit()) + (Math.Sin(35 * Degree) * p.Du.Unit());
        Geodesic g = GeodesicTracing.Trace(torus, new(0.2, 0), d, 0, 3000, 1e-5);
        Near(new(2584.738581, 2266.253641, 1117.383682), g, 3000);
        GeodesicPoint e = g.At(3000);
        Assert.Equal(0.3396635104, e.A, 1e-7);
        Assert.Equal(2391.239626, e.B, 1e-3);
        for (double s = 0; s <= 3000; s += 250)
        {
            SurfacePoint q = g.Under(s);
            double rho = Math.Sqrt((q.P.X * q.P.X) + (q.P.Y * q.P.Y));
            Assert.Equal(3420.844382, rho * g.At(s).Tangent.Dot(q.Dv.Unit()), 1e-3);
        }
    }

    [Fact]
    public void OnAHelicoidClairautHoldsToo()
    {
        // The helicoid has a screw motion into itself: the speed against its field, Du . T, is constant along a geodesic.
        var helicoid = new HelicoidSurface(2e-4);
        Geodesic g = From(helicoid, new(0, 300), 50 * Degree, 3000);
        double first = helicoid.At(0, 300).Du.Dot(g.At(0).Tangent);
        Assert.Equal(first, g.Under(3000).Du.Dot(g.At(3000).Tangent), 1e-8);
        (Vec3 p, _) = SpaceStepper.Walk(helicoid, new(0, 300), g.At(0).Tangent, 3000, 5);
        Assert.True(p.ChordTo(g.Under(3000).P) < EndMm);
    }

    /// <summary>A warped bottom (H2: z = y (0.2 + x/10 m)): traces from the keel at x0 and an angle to the forward keel direction, to the chine at y = 1 m.</summary>
    [Theory]
    [InlineData(1, 45, 1.5248024989518, 2.0749666257749, 43.103568919694, 1.0093702237391)]
    [InlineData(2, 45, 1.5864429960927, 3.1186375803979, 42.640281845535, 1.0088558494356)]
    [InlineData(3, 45, 1.6595683453759, 4.1704475393463, 42.225490871046, 1.0082615073564)]
    [InlineData(2, 60, 1.2720607189002, 2.6342315640564, 57.741722871445, 1.0058255804664)]
    [InlineData(4, 135, 1.5723816917813, 2.8909399646751, 132.27813655149, 1.0071210043226)]
    public void OnAWarpedBottomItReachesTheChineWhereItShould(
        double x0,
        double degrees,
        double length,
        double xAtChine,
        double angleAtChine,
        double spacing
    )
    {
        var bottom = new HyparSurface(1e-4, 0.2);
        Geodesic g = From(bottom, new(1000 * x0, 0), degrees * Degree, 1800);
        double s = g.Crossing(uv => uv.V - 1000, 1000, 1800);
        Assert.Equal(1000 * length, s, EndMm);
        Assert.Equal(1000 * xAtChine, g.UvAt(s).U, EndMm);
        double angle = Math.Acos(g.At(s).Tangent.Dot(g.Under(s).Du.Unit())) / Degree;
        Assert.Equal(angleAtChine, angle, 0.001);
        Assert.Equal(spacing, g.At(s).A, 1e-7);
    }

    [Fact]
    public void ThereAndBackIsTheSameLine()
    {
        var surface = new HyparSurface(1.5e-4, 0.2);
        Geodesic there = From(surface, new(500, 100), 50 * Degree, 2500);
        GeodesicPoint end = there.At(2500);
        Geodesic back = GeodesicTracing.Trace(surface, end.Uv, -end.Tangent, 0, 2500, 1e-5);
        Assert.True(back.Under(2500).P.ChordTo(surface.At(500, 100).P) < 1e-3);
        Geodesic both = GeodesicTracing.Trace(
            surface,
            there.UvAt(1000),
            there.At(1000).Tangent,
            1000,
            1500,
            1e-5
        );
        Assert.True(both.Under(-1000).P.ChordTo(surface.At(500, 100).P) < 1e-3);
        Assert.True(both.Under(1500).P.ChordTo(there.Under(2500).P) < 1e-3);
    }

    [Theory]
    [InlineData(-0.01)]
    [InlineData(500.01)]
    [InlineData(double.NaN)]
    public void PastItsEndsATraceSaysNothing(double s)
    {
        Geodesic g = From(new HyparSurface(1.5e-4), new(0, 0), 0.3, 500);
        Assert.Throws<ArgumentOutOfRangeException>(() => g.At(s));
        Assert.Throws<ArgumentOutOfRangeException>(() => g.Under(s));
        Assert.Throws<ArgumentOutOfRangeException>(() => g.UvAt(s));
    }

    [Theory]
    [InlineData("survey-launch", -14.5)]
    [InlineData("survey-launch", 0)]
    [InlineData("pilot-skiff", 4.76)]
    [InlineData("tender", -10)]
    public void OnTheDemoHullsAStepperInSpaceAgrees(string hull, double offset)
    {
        Job job = LoftTests.Demo(hull);
        LoftedSurface table = HullLoft.Build(job.Offsets, job.Hull.Panel).Surface;
        var layer = new ParallelSurface(table, offset);
        foreach (double part in new[] { 0.15, 0.3, 0.5, 0.7 })
        {
            double u = table.UFrom + (part * (table.UTo - table.UFrom));
            var start = new Uv(u, 0.2 * table.UpperV(u));
            SurfacePoint p = layer.At(start.U, start.V);
            Vec3 d = p.Du.Unit() + p.Dv.Unit();
            double length =
                0.9
                * p.Dv.Norm
                * 0.8
                * table.UpperV(u)
                / p.UnitTangent(d)
                    .Dot(p.Left(p.Du.Unit()) * Math.Sign(p.Left(p.Du.Unit()).Dot(p.Dv)));
            Geodesic g = GeodesicTracing.Trace(layer, start, d, 0, length, 1e-5);

            // The stepper's error falls with the square of the step: two steps give its limit.
            Vec3 coarse = SpaceStepper.Walk(layer, start, d, length, 8).P,
                fine = SpaceStepper.Walk(layer, start, d, length, 4).P;
            Vec3 limit = fine + ((fine - coarse) / 3);
            Vec3 end = g.Under(length).P;
            Vec3 miss = end - limit;
            double across = Math.Abs(miss.Dot(g.Under(length).Left(g.At(length).Tangent)));
            Assert.True(across < EndMm, $"{hull} at {part}: {across} mm beside the stepper's line");
            Assert.True(
                miss.Norm < EndMm,
                $"{hull} at {part}: {miss.Norm} mm from the stepper's end"
            );
        }
    }

    private static Geodesic From(ISurface surface, Uv start, double angle, double length)
    {
        SurfacePoint p = surface.At(start.U, start.V);
        Vec3 along = p.Du.Unit(),
            left = p.Left(along);
        left = left.Dot(p.Dv) > 0 ? left : -left;
        return GeodesicTracing.Trace(
            surface,
            start,
            (Math.Cos(angle) * along) + (Math.Sin(angle) * left),
            0,
            length,
            1e-5
        );
    }

    private static void Near(Vec3 exact, Geodesic g, double s)
    {
        double miss = g.Under(s).P.ChordTo(exact);
        Assert.True(miss < EndMm, $"{miss} mm off after {s} mm");
    }
}
