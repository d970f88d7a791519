using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Strips;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>Strips laid flat: strip coordinates against the sphere's closed forms, developables exact, and the strain that a sphere must show.</summary>
public sealed class StripTests
{
    [Fact]
    public void OnASphereThePerpendicularsLandWhereTrigonometrySays()
    {
        // A seam at offset d from the equator, square to it at s = 0; tan(t/R) = tan(d/R) cos(s/R).
        const double r = 3000,
            d = 75;
        var sphere = new SphereSurface(r);
        Geodesic equator = GeodesicTracing.Trace(sphere, new(0, 0), Vec3.UnitY, 1700, 1700, 1e-6);
        var strip = new FermiStrip(equator);
        double t = r * Math.Atan(Math.Tan(d / r) * Math.Cos(1500 / r));
        Assert.Equal(65.821843759, t, 1e-8);
        Uv point = strip.At(new(1500, t)).Uv;
        Fermi found = strip.Find(point, sphere.At(point.U, point.V).P, new(1450, 50), 1e-9);
        Assert.Equal(1500, found.S, 1e-5);
        Assert.Equal(t, found.T, 1e-5);

        // The seam itself: a great circle tilted by d/R, whose points must have these coordinates.
        Geodesic seam = GeodesicTracing.Trace(sphere, new(0, d / r), Vec3.UnitY, 1700, 1700, 1e-6);
        double arc = 2 * r * Math.Atan(Math.Tan(1500 / r) * Math.Cos(d / r));
        Assert.Equal(2999.211105381, arc, 1e-8);
        Uv end = seam.UvAt(arc / 2);
        Fermi f = strip.Find(end, sphere.At(end.U, end.V).P, new(1500, 60), 1e-9);
        Assert.Equal(1500, f.S, 1e-4);
        Assert.Equal(t, f.T, 1e-4);
    }

    [Fact]
    public void ASphereShowsItsStrain()
    {
        // w = 250, R = 3000: the strip laid flat must be stretched by 2.894e-4 in the middle and crowded by 5.787e-4 at the edges (K w²/24, K w²/12).
        const double r = 3000,
            w = 250;
        Geodesic equator = GeodesicTracing.Trace(
            new SphereSurface(r),
            new(0, 0),
            Vec3.UnitY,
            1600,
            1600,
            1e-6
        );
        var scale = StripScale.Along(equator, _ => w * w / 12, -1500, 1500, 0, 50);
        double flat = scale.Flat(1500) - scale.Flat(-1500);
        double middle = (3000 / flat) - 1,
            edge = (3000 * Math.Cos(w / 2 / r) / flat) - 1;
        Assert.Equal(2.894e-4, middle, 1e-6);
        Assert.Equal(-5.787e-4, edge, 1e-6);
    }

    [Theory]
    [InlineData(30)]
    [InlineData(45)]
    [InlineData(75)]
    public void DevelopablesLieFlatExactly(double degrees)
    {
        // Cylinder: laid flat, u along the axis and R v around: strip coordinates must be a plain rotation of that.
        const double r = 1500;
        var cylinder = new CylinderSurface(r);
        double a = degrees * Math.PI / 180;
        SurfacePoint p = cylinder.At(0, 0);
        Geodesic line = GeodesicTracing.Trace(
            cylinder,
            new(0, 0),
            (Math.Cos(a) * p.Du) + (Math.Sin(a) * p.Dv.Unit()),
            200,
            2000,
            1e-6
        );
        var strip = new FermiStrip(line);
        int hand = Math.Sign(p.Left(p.Du).Dot(p.Dv));
        foreach (
            (double u, double v) in new[] { (300, 0.25), (800, 0.4), (1000, 0.75), (100, 0.1) }
        )
        {
            double across = hand * r * v,
                s = (u * Math.Cos(hand * a)) + (across * Math.Sin(hand * a)),
                t = (-u * Math.Sin(hand * a)) + (across * Math.Cos(hand * a));
            if (Math.Abs(t) > 300 || s < 0 || s > 1900)
            {
                continue;
            }

            Fermi f = strip.Find(new(u, v), cylinder.At(u, v).P, new(s + 10, t - 5), 1e-9);
            Assert.Equal(s, f.S, 1e-4);
            Assert.Equal(t, f.T, 1e-4);
        }
    }

    [Fact]
    public void OnAHelicoidTheFibresLengthenAsTheyShould()
    {
        // The axis is a geodesic, the rulings its perpendiculars; a fibre at distance y is longer by sqrt(1 + tau² y²).
        const double tau = 2e-4,
            y = 75;
        var helicoid = new HelicoidSurface(tau);
        Geodesic axis = GeodesicTracing.Trace(helicoid, new(0, 0), Vec3.UnitX, 10, 1500, 1e-6);
        var strip = new FermiStrip(axis);
        double length = 0;
        Vec3 before = helicoid.At(0, y).P;
        for (int i = 1; i <= 3000; i++)
        {
            Uv uv = strip
                .At(
                    new(
                        i * 0.5,
                        Math.Sign(
                            helicoid.At(0, 0).Left(Vec3.UnitX).Z
                                + helicoid.At(0, 0).Left(Vec3.UnitX).Y
                        ) * y
                    )
                )
                .Uv;
            Vec3 here = helicoid.At(uv.U, Math.Abs(uv.V)).P;
            length += here.ChordTo(before);
            before = here;
        }

        Assert.Equal(1500 * Math.Sqrt(1 + (tau * tau * y * y)), length, 1e-3);
    }

    [Fact]
    public void InteriorDistancesKeepWithinTheStatedStrain()
    {
        var hypar = new HyparSurface(1.5e-4, 0.2);
        SurfacePoint p = hypar.At(1000, 100);
        Geodesic line = GeodesicTracing.Trace(
            hypar,
            new(1000, 100),
            p.Du.Unit() + p.Dv.Unit(),
            100,
            1300,
            1e-6
        );
        var strip = new FermiStrip(line);
        const double w = 150;
        double k = Enumerable.Range(0, 25).Max(i => Math.Abs(line.Under(i * 50).GaussCurvature));
        var scale = StripScale.Along(line, _ => w * w / 12, 0, 1200, 0, 50);
        double strain = k * w * w / 12 * 1.02;
        foreach (
            (Fermi a, Fermi b) in new[]
            {
                (new Fermi(100, -60), new Fermi(900, 40)),
                (new(50, 70), new(1150, 70)),
                (new(600, -70), new(640, 70)),
                (new(20, 0), new(1180, 0)),
            }
        )
        {
            double on = Distance(hypar, strip.At(a).Uv, strip.At(b).Uv);
            double flat = new Vec2(scale.Flat(a.S), a.T).ChordTo(new(scale.Flat(b.S), b.T));
            Assert.True(
                Math.Abs(on - flat) <= (strain * on) + 1e-4,
                $"{on} on the surface, {flat} in the flat"
            );
        }
    }

    [Fact]
    public void ClosestPointsAreThoseOfTheSphere()
    {
        var sphere = new SphereSurface(3000);
        Vec3 q = 3017.5 * sphere.At(0.5, 0.3).Normal;
        Assert.True(
            ClosestPoint.TryFind(sphere, q, new(0.3, 0.1), 1e-9, out ClosestPoint.Result foot)
        );
        Assert.Equal(17.5, foot.HeightMm, 1e-8);
        Assert.Equal(0.5, foot.Uv.U, 1e-10);
        Assert.True(foot.LeftoverMm < 1e-9);
    }

    /// <summary>Geodesic distance by aiming, with the Jacobi field only as a guide: the end is checked against the point itself.</summary>
    private static double Distance(ISurface surface, Uv from, Uv to)
    {
        Vec3 target = surface.At(to.U, to.V).P,
            aim = target - surface.At(from.U, from.V).P;
        double length = aim.Norm;
        for (int i = 0; i < 20; i++)
        {
            Geodesic g = GeodesicTracing.Trace(surface, from, aim, 0, length, 1e-7);
            Vec3 miss = target - g.Under(length).P;
            if (miss.Norm < 1e-6)
            {
                return length;
            }

            SurfacePoint start = surface.At(from.U, from.V);
            Vec3 t = start.UnitTangent(aim);
            double turn = miss.Dot(g.Under(length).Left(g.At(length).Tangent)) / g.At(length).B;
            length += miss.Dot(g.At(length).Tangent);
            aim = (Math.Cos(turn) * t) + (Math.Sin(turn) * start.Left(t));
        }

        throw new InvalidOperationException("no line found between two points of the test");
    }
}
