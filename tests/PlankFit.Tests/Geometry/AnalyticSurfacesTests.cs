using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>The measures that other tests use are themselves measured: derivatives by differences, curvatures by formula.</summary>
public sealed class AnalyticSurfacesTests
{
    private static readonly double Deg = Math.PI / 180;

    public static TheoryData<string, ISurface, double, double, double> Cases() =>
        new()
        {
            { "plane", new PlaneSurface(new(1, 2, 3), new(1, 0.2, 0), new(0, 1, 0.5)), 30, 40, 0 },
            { "cylinder", new CylinderSurface(2000), 300, 0.4, 0 },
            { "cone", new ConeSurface(25 * Deg), 0.7, 1800, 0 },
            { "helix", new HelixTangentSurface(2000, 800), 0.7, 900, 0 },
            { "sphere", new SphereSurface(3000), 0.4, 0.3, 1 / 9e6 },
            {
                "torus",
                new TorusSurface(3000, 1200),
                0.5,
                0.8,
                Math.Cos(0.5) / (1200 * (3000 + (1200 * Math.Cos(0.5))))
            },
            // The hyperbolic paraboloid, K(3, 1) in 1/m², here in mm.
            { "hypar", new HyparSurface(1e-4, 0.2), 3000, 1000, -0.0062988158226253e-6 },
            { "helicoid", new HelicoidSurface(1e-4), 800, 0, -1e-8 },
            {
                "moved",
                MovedSurface.Mirrored(
                    MovedSurface.Turned(new SphereSurface(2000), new(1, 2, 3), 1, new(4, 5, 6))
                ),
                0.4,
                0.3,
                1 / 4e6
            },
        };

    [Theory]
    [MemberData(nameof(Cases))]
    public void DerivativesAgreeWithDifferencesAndCurvatureWithItsFormula(
        string name,
        ISurface surface,
        double u,
        double v,
        double gauss
    )
    {
        SurfacePoint s = surface.At(u, v);
        double hu = 0.1 / s.Du.Norm,
            hv = 0.1 / s.Dv.Norm;
        SurfacePoint ua = surface.At(u - hu, v),
            ub = surface.At(u + hu, v),
            va = surface.At(u, v - hv),
            vb = surface.At(u, v + hv);
        Assert.True(((ub.P - ua.P) / (2 * hu)).ChordTo(s.Du) < 1e-6 * s.Du.Norm, name);
        Assert.True(((vb.P - va.P) / (2 * hv)).ChordTo(s.Dv) < 1e-6 * s.Dv.Norm, name);
        double scale = s.Du.Norm * s.Dv.Norm * 1e-9;
        Assert.Equal(((ub.Du - ua.Du) / (2 * hu)).Dot(s.Normal), s.L, Math.Max(scale, 1e-9 * s.E));
        Assert.Equal(((vb.Du - va.Du) / (2 * hv)).Dot(s.Normal), s.M, scale);
        Assert.Equal(((vb.Dv - va.Dv) / (2 * hv)).Dot(s.Normal), s.N, Math.Max(scale, 1e-9 * s.G));
        Assert.Equal(1, s.Normal.Norm, 1e-14);
        Assert.Equal(gauss, s.GaussCurvature, 1e-9 * Math.Max(1e-8, Math.Abs(gauss)));
    }

    [Fact]
    public void DefaultNormalsPointToTheSideThatIsStated()
    {
        SurfacePoint c = new CylinderSurface(2000).At(10, 0.3);
        Assert.True(c.Normal.Dot(new(0, c.P.Y, c.P.Z)) > 0);
        Assert.Equal(-1.0 / 2000, c.PrincipalCurvatures.Lesser, 1e-12);
        SurfacePoint k = new ConeSurface(0.4).At(0.3, 900);
        Assert.True(k.Normal.Dot(new(k.P.X, k.P.Y, 0)) > 0);
        SurfacePoint b = new SphereSurface(900).At(0.3, 0.2);
        Assert.True(b.Normal.Dot(b.P) > 0);
        SurfacePoint t = new TorusSurface(3000, 1200).At(0.5, 0);
        Assert.True(t.Normal.Dot(t.P - new Vec3(3000, 0, 0)) > 0);
        Assert.True(new HyparSurface(1e-4).At(50, 50).Normal.Z > 0);
        Assert.True(new HelicoidSurface(1e-4).At(0, 50).Normal.Z > 0);
        Assert.True(new HyparSurface(1e-4, Side: -1).At(50, 50).Normal.Z < 0);
    }

    [Fact]
    public void PointsKnownFromElsewhereLieWhereTheyShould()
    {
        // Closed forms, worked out to these digits outside the project.
        Vec3 cone = new ConeSurface(25 * Deg).At(1.3905244474, 3905.1248379533).P;
        Assert.True(cone.ChordTo(new(295.907746, 1623.632681, 3539.245050)) < 2e-6);
        Vec3 torus = new TorusSurface(3000, 1200).At(1.19756249, 0.71983868).P;
        Assert.True(torus.ChordTo(new(2584.738581, 2266.253641, 1117.383682)) < 3e-5);
    }
}
