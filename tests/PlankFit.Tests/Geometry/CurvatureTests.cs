using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>
/// Principal curvatures within 1e-9 of the largest, on surfaces where they are known in closed form (do Carmo ch. 3, from memory), umbilic points among them,
/// and in skewed parameters.
/// </summary>
public sealed class CurvatureTests
{
    [Fact]
    public void OnASphereBothAreOneOverTheRadius()
    {
        for (double u = 0.1; u < 6; u += 0.37)
        {
            for (double v = -1.2; v < 1.3; v += 0.21)
            {
                Same(-1.0 / 3000, -1.0 / 3000, new SphereSurface(3000).At(u, v));
                Same(-1.0 / 3000, -1.0 / 3000, new Skewed(new SphereSurface(3000)).At(u, v));
            }
        }
    }

    [Fact]
    public void OnACylinderAConeAndATangentSurfaceOneIsZero()
    {
        for (double t = 0.1; t < 2; t += 0.13)
        {
            Same(0, -1.0 / 1500, new CylinderSurface(1500).At(1000 * t, t));
            Same(0, -1.0 / 1500, new Skewed(new CylinderSurface(1500), 900).At(1000 * t, t));

            // Round a cone of half angle a the curvature is cot a over the slant distance.
            const double a = 25 * Math.PI / 180;
            Same(0, -1 / (Math.Tan(a) * 1700 * t), new ConeSurface(a).At(t, 1700 * t));

            // A tangent surface bends across its rulings with torsion / (curvature v): here (b / w²) / (a / w²) / v.
            double bend = 800.0 / 2000 / (900 * t);
            (double k1, double k2) = new HelixTangentSurface(2000, 800)
                .At(t, 900 * t)
                .PrincipalCurvatures;
            Assert.Equal(bend, Math.Max(Math.Abs(k1), Math.Abs(k2)), 1e-9 * bend);
            Assert.Equal(0, Math.Min(Math.Abs(k1), Math.Abs(k2)), 1e-9 * bend);
        }
    }

    [Fact]
    public void OnATorusATubeAndAnAxis()
    {
        for (double u = 0; u < 6.3; u += 0.23)
        {
            double around = -Math.Cos(u) / (3000 + (1200 * Math.Cos(u)));
            Same(around, -1.0 / 1200, new TorusSurface(3000, 1200).At(u, 0.4));
            Same(around, -1.0 / 1200, new Skewed(new TorusSurface(3000, 1200)).At(u, 0.4));
        }
    }

    [Fact]
    public void OnAHelicoidTheyAreOppositeAndEqual()
    {
        for (double v = -900; v < 1000; v += 170)
        {
            double k = 3e-4 / (1 + (3e-4 * 3e-4 * v * v));
            Same(k, -k, new HelicoidSurface(3e-4).At(700, v));
        }
    }

    private static void Same(double greater, double lesser, SurfacePoint p)
    {
        double largest = Math.Max(Math.Abs(greater), Math.Abs(lesser));
        (double k1, double k2) = p.PrincipalCurvatures;
        Assert.Equal(greater, k1, 1e-9 * largest);
        Assert.Equal(lesser, k2, 1e-9 * largest);
        Assert.Equal(greater * lesser, p.GaussCurvature, 2e-9 * largest * largest);
        Assert.Equal((greater + lesser) / 2, p.MeanCurvature, 1e-9 * largest);
    }

    /// <summary>The same surface in parameters (u + factor v, v), so that the tangents are far from square.</summary>
    private sealed record Skewed(ISurface Surface, double Factor = 0.8) : ISurface
    {
        public SurfacePoint At(double u, double v)
        {
            // P(u, v) as it lies: the parameters are q = u - factor v and v, so that dP/dq = Pu and dP/dv at constant q = Pv + factor Pu.
            SurfacePoint s = Surface.At(u, v);
            return s with
            {
                Dv = s.Dv + (Factor * s.Du),
                M = s.M + (Factor * s.L),
                N = s.N + (2 * Factor * s.M) + (Factor * Factor * s.L),
            };
        }
    }
}
