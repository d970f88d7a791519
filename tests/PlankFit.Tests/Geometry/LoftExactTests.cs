using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>
/// Surfaces that the loft must reproduce exactly, so that its principal curvatures can be held to 1e-9 of the largest against formulas that know nothing of
/// splines. A graph z = f(x, y) has K = (fxx fyy − fxy²)/W⁴ and 2H = ((1 + fy²) fxx − 2 fx fy fxy + (1 + fx²) fyy)/W³ (do Carmo 3-3,
/// from memory), normal towards +z.
/// </summary>
public sealed class LoftExactTests
{
    private static readonly double[] Stations = [0, 500, 1300, 2000, 3100, 4200, 5000, 6000];

    /// <summary>Straight sections on straight lines: a hyperbolic paraboloid z = y (0.2 + 1e-4 x), the warped bottom H2.</summary>
    [Fact]
    public void AHypar()
    {
        LoftedSurface loft = Lofted(x => [new(x, 0, 0), new(x, 1000, 1000 * (0.2 + (1e-4 * x)))]);
        Each(
            loft,
            p =>
                Graph(
                    p.P.Y * (0.2 + (1e-4 * p.P.X)),
                    1e-4 * p.P.Y,
                    0.2 + (1e-4 * p.P.X),
                    0,
                    1e-4,
                    0
                )
        );
    }

    /// <summary>Camber z = 4 h(x) (y/b)(1 − y/b), h a cubic: keel and chine are straight, so that u is x and the loft is the graph itself.</summary>
    [Fact]
    public void ACamberedBottom()
    {
        const double b = 900;
        double H(double x) => 20 + (9e-3 * x) - (4e-6 * x * x) + (4e-10 * x * x * x);
        double H1(double x) => 9e-3 - (8e-6 * x) + (12e-10 * x * x);
        double H2(double x) => -8e-6 + (24e-10 * x);
        LoftedSurface loft = Lofted(x => [new(x, 0, 0), new(x, b / 2, H(x)), new(x, b, 0)]);
        Each(
            loft,
            p =>
            {
                double x = p.P.X,
                    y = p.P.Y,
                    f = 4 * (y / b) * (1 - (y / b)),
                    f1 = 4 / b * (1 - (2 * y / b)),
                    f2 = -8 / (b * b);
                return Graph(H(x) * f, H1(x) * f, H(x) * f1, H2(x) * f, H1(x) * f1, H(x) * f2);
            }
        );
    }

    /// <summary>Level sections on a rockered keel: whatever the spline does between the stations, one curvature is zero and the sections stay level.</summary>
    [Fact]
    public void ACylinderOnARockeredKeel()
    {
        const double c = 3e-5;
        LoftedSurface loft = Lofted(x => [new(x, 0, c * x * x), new(x, 800, c * x * x)]);
        foreach (SurfacePoint p in Points(loft))
        {
            Assert.Equal(0, p.PrincipalCurvatures.Lesser, 1e-16);
            Assert.Equal(0, p.GaussCurvature, 1e-20);
            Assert.Equal(0, p.Normal.Y, 1e-12);
        }
    }

    /// <summary>
    /// A cambered bottom that ends in a point: in the frame of the keel, the slope of the sections and their perpendicular it is the graph
    /// z' = 4 c (y'/L)(x' − y'/L), whose K at the apex itself is −16 c²/L².
    /// </summary>
    [Fact]
    public void ACamberedBottomThatEndsInAPoint()
    {
        const double a = 0.35,
            b = 0.2,
            c = 2e-5;
        double l = Math.Sqrt((a * a) + (b * b));
        Vec3 across = new(0, a / l, b / l),
            square = new(0, -b / l, a / l);
        LoftedSurface loft = Loft.Through(
            [
                .. Stations.Select(x =>
                    (IReadOnlyList<Vec3>)
                        [
                            new(x, 0, 0),
                            new Vec3(x, x * a / 2, x * b / 2) + (c * x * x * square),
                            new(x, x * a, x * b),
                        ]
                ),
            ],
            square,
            0.01
        );
        double rate = loft.UTo / 6000;
        foreach (double x in new[] { 0, 1e-7, 1e-3, 1, 499, 501, 2500, 5999.0 })
        {
            foreach (double t in new[] { -0.1, 0, 0.3, 0.5, 1, 1.1 })
            {
                SurfacePoint p = loft.At(x * rate, t * x * rate);
                double y = p.P.Dot(across);
                Assert.Equal(t * x * l, y, 1e-9);
                Same(
                    Graph(
                        4 * c * (y / l) * (x - (y / l)),
                        4 * c * y / l,
                        4 * c / l * (x - (2 * y / l)),
                        0,
                        4 * c / l,
                        -8 * c / (l * l)
                    ),
                    p,
                    p.P.Dot(square)
                );
            }
        }

        Assert.Equal(
            -16 * c * c / (l * l),
            loft.At(0, 0).GaussCurvature,
            1e-9 * 16 * c * c / l / l
        );
    }

    private readonly record struct Expected(double Z, double Greater, double Lesser);

    private static Expected Graph(
        double z,
        double fx,
        double fy,
        double fxx,
        double fxy,
        double fyy
    )
    {
        double w2 = 1 + (fx * fx) + (fy * fy),
            k = ((fxx * fyy) - (fxy * fxy)) / (w2 * w2),
            h =
                (((1 + (fy * fy)) * fxx) - (2 * fx * fy * fxy) + ((1 + (fx * fx)) * fyy))
                / (2 * w2 * Math.Sqrt(w2)),
            r = Math.Sqrt((h * h) - k);
        return new(z, h + r, h - r);
    }

    private static LoftedSurface Lofted(Func<double, Vec3[]> section) =>
        Loft.Through([.. Stations.Select(section)], Vec3.UnitZ, 0.01);

    private static IEnumerable<SurfacePoint> Points(LoftedSurface loft)
    {
        for (int i = 0; i <= 40; i++)
        {
            for (int j = -1; j <= 11; j++)
            {
                yield return loft.At(
                    loft.UFrom + ((loft.UTo - loft.UFrom) * i / 40),
                    loft.UpperV(loft.UFrom) * j / 10
                );
            }
        }
    }

    private static void Each(LoftedSurface loft, Func<SurfacePoint, Expected> exact)
    {
        foreach (SurfacePoint p in Points(loft))
        {
            Same(exact(p), p, p.P.Z);
        }
    }

    private static void Same(Expected exact, SurfacePoint p, double z)
    {
        Assert.Equal(exact.Z, z, 1e-9);
        double largest = Math.Max(Math.Abs(exact.Greater), Math.Abs(exact.Lesser));
        (double greater, double lesser) = p.PrincipalCurvatures;
        Assert.Equal(exact.Greater, greater, 1e-9 * largest);
        Assert.Equal(exact.Lesser, lesser, 1e-9 * largest);
    }
}
