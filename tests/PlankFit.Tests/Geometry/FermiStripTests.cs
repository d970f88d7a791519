using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Strips;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>Strip coordinates on analytic surfaces, their parallels and the demo hulls: there and back, metric, closed forms.</summary>
public sealed class FermiStripTests
{
    private const double Degree = Math.PI / 180;

    [Theory]
    [MemberData(nameof(GeodesicAccuracyTests.Rays), MemberType = typeof(GeodesicAccuracyTests))]
    public void ThereAndBack(string name, ISurface surface, Uv start, double degrees)
    {
        FermiStrip strip = Strip(surface, start, degrees);
        foreach (double s in new[] { 30.0, 333, 700 })
        {
            foreach (double t in new[] { -125.0, -75, 0, 20, 75, 125 })
            {
                FermiLaws.RoundTrip(strip, new(s, t), new(12, -9));
                FermiLaws.RoundTrip(strip, new(s, t), new(-25, 40));
            }
        }

        Assert.NotEmpty(name);
    }

    [Theory]
    [MemberData(nameof(GeodesicAccuracyTests.Rays), MemberType = typeof(GeodesicAccuracyTests))]
    public void TheMetricIsThatOfAStrip(string name, ISurface surface, Uv start, double degrees)
    {
        FermiStrip strip = Strip(surface, start, degrees);
        foreach (double s in new[] { 30.0, 333, 700 })
        {
            foreach (double t in new[] { -125.0, -75, 20, 75, 125 })
            {
                FermiLaws.Metric(strip, new(s, t));
            }
        }

        Assert.NotEmpty(name);
    }

    /// <summary>
    /// A seam 150 mm off the equator, square to it at its start: after s along it the perpendicular gap is R asin(sin(w0/R) cos(s/R)) (spherical trigonometry,
    /// R = 5 m).
    /// </summary>
    [Theory]
    [InlineData(1000, 147.009116015)]
    [InlineData(2000, 138.156005456089)]
    [InlineData(3000, 123.794420344668)]
    public void TheGapBesideTheEquatorIsExact(double s, double gap)
    {
        var sphere = new SphereSurface(5000);
        Geodesic equator = GeodesicTracing.Trace(sphere, new(0, 0), Vec3.UnitY, 100, 3200, 1e-9),
            seam = GeodesicTracing.Trace(sphere, new(0, 150.0 / 5000), Vec3.UnitY, 0, 3200, 1e-9);
        Fermi f = new FermiStrip(equator).Find(seam.UvAt(s), seam.Under(s).P, new(s, 140), 1e-9);
        Assert.Equal(gap, f.T, 1e-6);
    }

    /// <summary>Laid flat, a cone is its sector: strip coordinates are the sector's, turned and shifted (error below 1e-6).</summary>
    [Theory]
    [InlineData(20)]
    [InlineData(60)]
    [InlineData(110)]
    public void AConeLiesFlatExactly(double degrees)
    {
        const double a = 25 * Degree;
        var cone = new ConeSurface(a);
        FermiStrip strip = Strip(cone, new(0.5, 2500), degrees);

        // In the sector: polar angle u sin a, radius v; seen from outside, u turns to the left of v or to the right as the normal says.
        SurfacePoint p = cone.At(0.5, 2500);
        double hand = Math.Sign(p.Left(p.Dv).Dot(p.Du));
        Vec2 Sector(Uv uv) =>
            new(uv.V * Math.Cos(uv.U * Math.Sin(a)), hand * uv.V * Math.Sin(uv.U * Math.Sin(a)));
        Vec2 origin = Sector(strip.Centre.UvAt(0)),
            along = (Sector(strip.Centre.UvAt(800)) - origin).Unit();
        foreach (
            (double s, double t) in new[] { (50.0, 100.0), (400, -140), (790, 125), (10, -60) }
        )
        {
            Vec2 q = Sector(strip.At(new(s, t)).Uv) - origin;
            Assert.Equal(s, q.Dot(along), 1e-6);
            Assert.Equal(t, along.Cross(q), 1e-6);
        }
    }

    [Fact]
    public void ACylinderLiesFlatExactly()
    {
        var cylinder = new CylinderSurface(1500);
        FermiStrip strip = Strip(cylinder, new(0, 0.2), 35);
        SurfacePoint p = cylinder.At(0, 0.2);
        double hand = Math.Sign(p.Left(p.Du).Dot(p.Dv));
        Vec2 Flat(Uv uv) => new(uv.U, hand * 1500 * (uv.V - 0.2));
        Vec2 along = Flat(strip.Centre.UvAt(800)).Unit();
        foreach (
            (double s, double t) in new[] { (50.0, 100.0), (400, -140), (790, 125), (10, -60) }
        )
        {
            Vec2 q = Flat(strip.At(new(s, t)).Uv);
            Assert.Equal(s, q.Dot(along), 1e-6);
            Assert.Equal(t, along.Cross(q), 1e-6);
        }
    }

    /// <summary>
    /// A foot at a whole number of steps: one step more or less moves the end by the step's own error, and a search that let the number flip went to
    /// and fro for ever (found by <see cref="RandomLoftTests"/>).
    /// </summary>
    [Theory]
    [InlineData(40)]
    [InlineData(80)]
    [InlineData(-120)]
    public void AFootAtAWholeNumberOfStepsIsFound(double t)
    {
        foreach (double nudge in new[] { 0, 1e-7, -1e-7, 1e-5, -1e-5 })
        {
            var sphere = new SphereSurface(500);
            Geodesic line = GeodesicTracing.Trace(sphere, new(0, 0), Vec3.UnitY, 0, 600, 1e-9);
            var foot = new Uv(300.0 / 500, (t + nudge) / 500);
            Fermi f = new FermiStrip(line, 40).Find(
                foot,
                sphere.At(foot.U, foot.V).P,
                new(310, t - 6),
                1e-9
            );
            Assert.Equal(300, f.S, 1e-4);
            Assert.Equal(t + nudge, f.T, 1e-4);
        }
    }

    [Fact]
    public void TheScaleStartsAtItsZeroAndNeedsNoCentredStrip()
    {
        // A strip from the line itself to one side, width w: the mean of t² is w²/3; on a sphere the rate is then 1 - w²/(6 R²) everywhere.
        const double r = 3000,
            w = 150;
        Geodesic line = GeodesicTracing.Trace(
            new SphereSurface(r),
            new(0, 0),
            Vec3.UnitY,
            600,
            1000,
            1e-7
        );
        var scale = StripScale.Along(line, _ => w * w / 3, -500, 900, 200, 50);
        double rate = 1 - (w * w / (6 * r * r));
        Assert.Equal(0, scale.Flat(200), 1e-9);
        Assert.Equal(700 * rate, scale.Flat(900), 1e-7);
        Assert.Equal(-700 * rate, scale.Flat(-500), 1e-7);
        Assert.Equal(rate, scale.Rate(321), 1e-10);
    }

    [Fact]
    public void APointFarFromTheStripIsRefused()
    {
        FermiStrip strip = Strip(new HyparSurface(1.5e-4, 0.2), new(1000, 0), 45);
        Assert.Throws<GeodesicException>(() =>
            strip.Find(new(9000, 0), new(9000, 0, 0), new(400, 0), 1e-6)
        );
        Assert.Throws<GeodesicException>(() =>
            strip.Find(new(1500, 500), new(double.NaN, 0, 0), new(400, 0), 1e-6)
        );
    }

    private static FermiStrip Strip(ISurface surface, Uv start, double degrees)
    {
        SurfacePoint p = surface.At(start.U, start.V);
        Vec3 along = p.Du.Unit(),
            across = (p.Dv - (p.Dv.Dot(along) * along)).Unit();
        return new(
            GeodesicTracing.Trace(
                surface,
                start,
                (Math.Cos(degrees * Degree) * along) + (Math.Sin(degrees * Degree) * across),
                60,
                850,
                1e-9
            ),
            10
        );
    }
}
