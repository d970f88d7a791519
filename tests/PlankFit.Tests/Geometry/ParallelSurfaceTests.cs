using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Whole;

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

    [Theory]
    [InlineData(-14.5)]
    [InlineData(9)]
    public void TheParallelOfACylinderIsACylinder(double z)
    {
        SurfacePoint p = new ParallelSurface(new CylinderSurface(1500), z).At(700, 0.5);
        Same(new CylinderSurface(1500 + z).At(700, 0.5), p);
    }

    [Fact]
    public void TheParallelOfAConeIsAConeWithItsApexMoved()
    {
        // Its apex lies z / sin a behind, on the axis; its points z cot a further along the generator.
        const double a = 0.4,
            z = -30;
        SurfacePoint p = new ParallelSurface(new ConeSurface(a), z).At(0.7, 2000);
        SurfacePoint exact = new ConeSurface(a).At(0.7, 2000 + (z / Math.Tan(a)));
        Assert.True(p.P.ChordTo(exact.P - (z / Math.Sin(a) * Vec3.UnitZ)) < 1e-9);
        Assert.True(p.Normal.ChordTo(exact.Normal) < 1e-12);
        Assert.Equal(
            exact.PrincipalCurvatures.Lesser,
            p.PrincipalCurvatures.Lesser,
            1e-9 * Math.Abs(exact.PrincipalCurvatures.Lesser)
        );
        Assert.Equal(0, p.PrincipalCurvatures.Greater, 1e-12 / 1000);
    }

    /// <summary>
    /// Where 1 − z k is not positive for one of the curvatures, the parallel has folded: its tangents have the other hand to its normal. A layer so thick
    /// is refused by the planner; here, that the sign tells.
    /// </summary>
    [Theory]
    [InlineData(-1100, 1)]
    [InlineData(-1300, -1)]
    public void AFoldTurnsTheHandOfTheTangents(double z, int hand)
    {
        // A torus bends by -1/1200 everywhere round its tube: it folds past 1200 inward.
        var torus = new TorusSurface(3000, 1200);
        SurfacePoint before = torus.At(0.3, 0.4),
            after = new ParallelSurface(torus, z).At(0.3, 0.4);
        Assert.Equal(hand, Math.Sign(1 - (z * before.PrincipalCurvatures.Lesser)));
        double Hand(SurfacePoint p) => p.Du.Cross(p.Dv).Dot(p.Normal);
        Assert.Equal(hand, Math.Sign(Hand(after) * Hand(before)));
    }

    [Fact]
    public void DerivativesOfAParallelAreThoseOfItsPositions()
    {
        foreach (string hull in new[] { "survey-launch", "pilot-skiff", "tender" })
        {
            Job job = LoftTests.Demo(hull);
            LoftedSurface table = HullLoft.Build(job.Offsets, job.Hull.Panel).Surface;
            var layer = new ParallelSurface(table, -14.5);
            for (int i = 1; i < 40; i++)
            {
                double u = table.UFrom + ((table.UTo - table.UFrom) * i / 40.37);
                Differences.Hold(layer, new(u, table.UpperV(u) * (0.1 + (0.8 * (i % 7) / 6))));
            }
        }
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
