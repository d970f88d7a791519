using PlankFit.Geometry;

namespace PlankFit.Tests.Geometry;

/// <summary>Parallel surfaces against surfaces whose parallels are known: position, normal, and curvature k / (1 − z k).</summary>
public sealed class ParallelSurfaceTests
{
    [Theory]
    [InlineData(-14.5)]
    [InlineData(9)]
    public void TheParallelOfASphereIsASphere(double z)
    {
        var outer = new ParallelSurface(new SphereSurface(3000), z);
        SurfacePoint p = outer.At(0.4, 0.7),
            exact = new SphereSurface(3000 + z).At(0.4, 0.7);
        Same(exact, p);
    }

    [Theory]
    [InlineData(-14.5)]
    [InlineData(9)]
    public void TheParallelOfATorusIsATorus(double z)
    {
        SurfacePoint p = new ParallelSurface(new TorusSurface(3000, 1200), z).At(0.2, 0.5);
        Same(new TorusSurface(3000, 1200 + z).At(0.2, 0.5), p);
    }

    [Fact]
    public void CurvaturesOfAParallelHyparFollowTheRule()
    {
        var hypar = new HyparSurface(1.5e-4, 0.2);
        (double k1, double k2) = hypar.At(2000, 400).PrincipalCurvatures;
        const double z = -30;
        (double q1, double q2) = new ParallelSurface(hypar, z).At(2000, 400).PrincipalCurvatures;
        double largest = Math.Max(Math.Abs(k1), Math.Abs(k2));
        Assert.Equal(k1 / (1 - (z * k1)), q1, 1e-9 * largest);
        Assert.Equal(k2 / (1 - (z * k2)), q2, 1e-9 * largest);
    }

    [Fact]
    public void ParallelsAddUp()
    {
        var hypar = new HyparSurface(1.5e-4, 0.2);
        SurfacePoint twice = new ParallelSurface(new ParallelSurface(hypar, 5), 7).At(1000, 300);
        Same(new ParallelSurface(hypar, 12).At(1000, 300), twice);
    }

    [Fact]
    public void PrincipalCurvaturesOfKnownSurfacesAreExact()
    {
        (double a, double b) = new TorusSurface(3000, 1200).At(0.2, 0.5).PrincipalCurvatures;
        double around = Math.Cos(0.2) / (3000 + (1200 * Math.Cos(0.2)));
        Assert.Equal(-around, a, 1e-9 / 1200);
        Assert.Equal(-1.0 / 1200, b, 1e-9 / 1200);
        (a, b) = new HelicoidSurface(1e-3).At(100, 1000).PrincipalCurvatures;
        Assert.Equal(0, a + b, 1e-12);
        Assert.Equal(-1e-6 / 4, a * b, 1e-15);
    }

    private static void Same(SurfacePoint exact, SurfacePoint p)
    {
        Assert.True(exact.P.ChordTo(p.P) < 1e-9);
        Assert.True(exact.Normal.ChordTo(p.Normal) < 1e-12);
        Assert.True(exact.Du.ChordTo(p.Du) < 1e-9 * Math.Max(1, exact.Du.Norm));
        double scale = 1e-10 * Math.Max(exact.E, exact.G) / 1000;
        Assert.Equal(exact.L, p.L, scale);
        Assert.Equal(exact.M, p.M, scale);
        Assert.Equal(exact.N, p.N, scale);
    }
}
