using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>Geodesics against closed forms (exact mathematics; there in metres, here in mm).</summary>
public sealed class GeodesicClosedFormTests
{
    private const double EndMm = 0.01;
    private const double Degree = Math.PI / 180;

    [Fact]
    public void BetweenTwoPointsOfACylinder()
    {
        var cylinder = new CylinderSurface(3000);
        SurfacePoint p = cylinder.At(0, 0);
        double angle = 60.1891116733 * Degree;
        Geodesic g = GeodesicTracing.Trace(
            cylinder,
            new(0, 0),
            (Math.Cos(angle) * p.Du) + (Math.Sin(angle) * p.Dv.Unit()),
            0,
            2413.81251238132,
            1e-5
        );
        Near(cylinder.At(1200, 40 * Degree).P, g, g.To);
        Assert.Equal(2377.2252783147, g.Under(g.To).P.ChordTo(p.P), EndMm);
        Assert.Equal(angle, Math.Acos(g.At(g.To).Tangent.Dot(Vec3.UnitX)), 1e-6);
    }

    [Fact]
    public void BetweenTwoPointsOfACone()
    {
        // Half angle 30 degrees, a quarter of the way round: laid flat, 45 degrees; the chord leaves 67.5 degrees off the generator, towards the apex.
        var cone = new ConeSurface(30 * Degree);
        SurfacePoint p = cone.At(0, 2000);
        Geodesic g = GeodesicTracing.Trace(
            cone,
            new(0, 2000),
            (-Math.Cos(67.5 * Degree) * p.Dv) + (Math.Sin(67.5 * Degree) * p.Du.Unit()),
            0,
            1530.73372946036,
            1e-5
        );
        Near(cone.At(Math.PI / 2, 2000).P, g, g.To);
        Assert.Equal(1847.75906502257, g.UvAt(g.To / 2).V, EndMm);
    }

    [Fact]
    public void BetweenTwoPointsOfASphere()
    {
        var sphere = new SphereSurface(5000);
        Vec3 p = sphere.At(0, 10 * Degree).P,
            q = sphere.At(40 * Degree, 30 * Degree).P;
        Geodesic g = GeodesicTracing.Trace(
            sphere,
            new(0, 10 * Degree),
            q - p,
            0,
            3687.4455754057,
            1e-5
        );
        Near(q, g, g.To);
    }

    /// <summary>Neighbours started alike: w(s)/w0 = cos(s/R) on a sphere, cosh(s/R) on a pseudosphere, whichever way they run.</summary>
    [Theory]
    [InlineData(1000, 0.980066577841242, 1.12762596520638)]
    [InlineData(2000, 0.921060994002885, 1.54308063481524)]
    [InlineData(3000, 0.825335614909678, 2.35240961524325)]
    public void NeighboursCloseInOnASphereAndSpreadOnAPseudosphere(
        double s,
        double sphere,
        double pseudosphere
    )
    {
        foreach (double angle in new[] { 0.0, 0.7, 1.4 })
        {
            Assert.Equal(sphere, Ray(new SphereSurface(5000), new(0, 0), angle, s).At(s).A, 1e-7);
            Geodesic g = Ray(new PseudosphereSurface(2000), new(1.1, 0), angle - 0.7, s);
            Assert.Equal(pseudosphere, g.At(s).A, 1e-6);
            Assert.Equal(2000 * Math.Sinh(s / 2000), g.At(s).B, 1e-3);
        }
    }

    [Fact]
    public void OnAPseudosphereClairautHolds()
    {
        var surface = new PseudosphereSurface(2000);
        Geodesic g = Ray(surface, new(0.8, 0.3), 40 * Degree, 1800);
        double Moment(double s) => g.At(s).Tangent.Dot(g.Under(s).Dv);
        for (double s = 100; s <= 1800; s += 100)
        {
            Assert.Equal(Moment(0), Moment(s), 1e-3);
        }
    }

    [Fact]
    public void OnATorusItTurnsBackWhereClairautSays()
    {
        var torus = new TorusSurface(3000, 1000);
        SurfacePoint p = torus.At(0, 0);
        Geodesic g = GeodesicTracing.Trace(
            torus,
            new(0, 0),
            (Math.Cos(60 * Degree) * p.Du.Unit()) + (Math.Sin(60 * Degree) * p.Dv.Unit()),
            0,
            4000,
            1e-5
        );
        double Rho(Uv uv) => 3000 + (1000 * Math.Cos(uv.U));
        double back = MathNet.Numerics.RootFinding.Brent.FindRoot(
            s => g.At(s).Tangent.Dot(g.Under(s).Du.Unit()),
            500,
            3500
        );
        Assert.Equal(3464.10161513775, Rho(g.UvAt(back)), 1e-3);
        double at = g.Crossing(uv => Rho(uv) - 3600, 0, back);
        double angle = Math.Acos(g.At(at).Tangent.Dot(g.Under(at).Du.Unit())) / Degree;
        Assert.Equal(74.206830951736, angle, 0.001);
    }

    [Fact]
    public void TheDiagonalOfAHypar()
    {
        var hypar = new HyparSurface(1.0 / 2000);
        Geodesic g = GeodesicTracing.Trace(
            hypar,
            new(0, 0),
            new(1, 1, 0),
            0,
            2469.7876524635,
            1e-5
        );
        Near(new(1500, 1500, 1125), g, g.To);
    }

    /// <summary>K = 1e-8, 1.4 m long, 150 mm wide: started parallel at one end the width loses 1.4676 mm, in the middle 0.36735 mm.</summary>
    [Fact]
    public void WhatAParallelStartCosts()
    {
        Geodesic g = Ray(new SphereSurface(10000), new(0, 0), 0.4, 1400);
        Assert.Equal(1.4676, 150 * (1 - g.At(1400).A), 5e-5);
        Assert.Equal(0.36735, 150 * (1 - g.At(700).A), 5e-6);
    }

    /// <summary>The chords of the warped bottom's planks (H2), apart from the lengths that are checked elsewhere.</summary>
    [Theory]
    [InlineData(1, 45, 1523.6819801197)]
    [InlineData(2, 45, 1585.3562826927)]
    [InlineData(3, 45, 1658.5209286349)]
    [InlineData(2, 60, 1271.6173554723)]
    [InlineData(4, 135, 1571.3774528532)]
    public void ChordsOnAWarpedBottom(double x0, double degrees, double chord)
    {
        var bottom = new HyparSurface(1e-4, 0.2);
        Geodesic g = Ray(bottom, new(1000 * x0, 0), degrees * Degree, 1800);
        double s = g.Crossing(uv => uv.V - 1000, 1000, 1800);
        Assert.Equal(chord, g.Under(s).P.ChordTo(new(1000 * x0, 0, 0)), EndMm);
    }

    /// <summary>
    /// Gauss and Bonnet on the warped bottom: the quadrilateral of keel, two planks and chine has geodesic sides, so its angles tell the integral of K
    /// over it. The integral is made here by Simpson's rule from K's formula, the planks' lines alone from the kernel.
    /// </summary>
    [Fact]
    public void AnglesAddUpToTheCurvatureInside()
    {
        var bottom = new HyparSurface(1e-4, 0.2);
        Geodesic fore = Ray(bottom, new(1000, 0), 45 * Degree, 1800),
            aft = Ray(bottom, new(2000, 0), 45 * Degree, 1800);
        double AngleAtChine(Geodesic g)
        {
            double s = g.Crossing(uv => uv.V - 1000, 1000, 1800);
            return Math.Acos(g.At(s).Tangent.Dot(g.Under(s).Du.Unit()));
        }

        double inside = Simpson(
            0,
            1000,
            v =>
            {
                double from = v == 0 ? 1000 : fore.UvAt(fore.Crossing(uv => uv.V - v, 0, 1800)).U,
                    to = v == 0 ? 2000 : aft.UvAt(aft.Crossing(uv => uv.V - v, 0, 1800)).U;
                return Simpson(
                    from,
                    to,
                    u =>
                        -1e-8
                        / Math.Pow(
                            1 + (1e-8 * v * v) + ((0.2 + (1e-4 * u)) * (0.2 + (1e-4 * u))),
                            1.5
                        )
                );
            }
        );
        Assert.Equal(-0.008085884826, inside, 1e-8);
        Assert.Equal(inside, AngleAtChine(aft) - AngleAtChine(fore), 1e-7);
    }

    private static double Simpson(double from, double to, Func<double, double> f)
    {
        const int n = 40;
        double h = (to - from) / n;
        return h
            / 3
            * Enumerable
                .Range(0, n + 1)
                .Sum(i =>
                    f(from + (i * h))
                    * (
                        i is 0 or n ? 1
                        : i % 2 == 1 ? 4
                        : 2
                    )
                );
    }

    /// <summary>A geodesic at an angle to the line of growing u, turned towards growing v.</summary>
    private static Geodesic Ray(ISurface surface, Uv start, double angle, double length)
    {
        SurfacePoint p = surface.At(start.U, start.V);
        Vec3 along = p.Du.Unit(),
            across = (p.Dv - (p.Dv.Dot(along) * along)).Unit();
        return GeodesicTracing.Trace(
            surface,
            start,
            (Math.Cos(angle) * along) + (Math.Sin(angle) * across),
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
