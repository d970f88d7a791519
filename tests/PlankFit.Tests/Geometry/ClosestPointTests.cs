using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Geometry;

/// <summary>Closest points: a point set off along the normal must come back to its foot, and closed forms where there are any.</summary>
public sealed class ClosestPointTests
{
    public static TheoryData<string, ISurface, Uv, Uv> Feet() =>
        new()
        {
            {
                "plane",
                new PlaneSurface(Vec3.Zero, new(1, 0.2, 0), new(0, 1, 0.5)),
                new(30, 40),
                new(500, 300)
            },
            { "cylinder", new CylinderSurface(2000), new(700, 0.5), new(60, 0.05) },
            { "cone", new ConeSurface(0.4), new(0.5, 2500), new(0.05, 150) },
            { "sphere", new SphereSurface(3000), new(0.5, 0.3), new(0.1, 0.1) },
            { "torus", new TorusSurface(3000, 1200), new(0.2, 0.5), new(0.1, 0.06) },
            { "hypar", new HyparSurface(1.5e-4, 0.2), new(2000, 500), new(200, 150) },
            { "helicoid", new HelicoidSurface(2e-4), new(1500, 300), new(100, 100) },
            { "launch", Hull("survey-launch"), new(4000, 0.4), new(150, 0.15) },
            { "skiff", Hull("pilot-skiff"), new(3000, 0.6), new(150, 0.15) },
            { "tender near its stem", Hull("tender"), new(120, 60), new(40, 30) },
        };

    [Theory]
    [MemberData(nameof(Feet))]
    public void APointSetOffComesBackToItsFoot(string name, ISurface surface, Uv foot, Uv astray)
    {
        SurfacePoint p = surface.At(foot.U, foot.V);
        foreach (double height in new[] { 0, 14.5, -14.5, 60, -60 })
        {
            foreach (Uv guess in new[] { foot + astray, foot - (0.7 * astray), foot })
            {
                Assert.True(
                    ClosestPoint.TryFind(
                        surface,
                        p.P + (height * p.Normal),
                        guess,
                        1e-9,
                        out ClosestPoint.Result found
                    ),
                    $"{name}: not found from {guess}"
                );
                Assert.Equal(height, found.HeightMm, 1e-8);
                Assert.True(found.Foot.P.ChordTo(p.P) < 1e-7, name);
                Assert.True(found.LeftoverMm < 1e-9);
            }
        }
    }

    [Fact]
    public void TheHeightOverAConeIsTrigonometry()
    {
        // From a point of the axis at z, the nearest point of a cone of half angle a lies z cos a down the slant, z sin a away.
        const double a = 0.4,
            z = 2000;
        Assert.True(
            ClosestPoint.TryFind(
                new ConeSurface(a),
                new(1e-9, 0, z),
                new(0, 1700),
                1e-9,
                out ClosestPoint.Result found
            )
        );
        Assert.Equal(z * Math.Cos(a), found.Uv.V, 1e-6);
        Assert.Equal(-z * Math.Sin(a), found.HeightMm, 1e-6);
    }

    /// <summary>Nine tenths of the way to the centre of a sphere the second form counts: without it the search would still be underway after thirty steps.</summary>
    [Fact]
    public void CurvatureIsReckonedWith()
    {
        var sphere = new SphereSurface(3000);
        Assert.True(
            ClosestPoint.TryFind(
                sphere,
                300 * sphere.At(0.5, 0.3).Normal,
                new(0.46, 0.25),
                1e-9,
                out ClosestPoint.Result found
            )
        );
        Assert.Equal(-2700, found.HeightMm, 1e-8);
        Assert.Equal(0.5, found.Uv.U, 1e-9);
        Assert.Equal(0.3, found.Uv.V, 1e-9);
    }

    [Fact]
    public void APointThatIsNoneIsNotFound()
    {
        Assert.False(
            ClosestPoint.TryFind(
                new HelicoidSurface(1e-3),
                new(double.NaN, 0, 0),
                new(0, 0),
                1e-9,
                out _
            )
        );
    }

    private static LoftedSurface Hull(string name)
    {
        Job job = LoftTests.Demo(name);
        return HullLoft.Build(job.Offsets, job.Hull.Panel).Surface;
    }
}
