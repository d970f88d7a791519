using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Geometry;

/// <summary>What the tracing says of its own accuracy, held to it: on analytic surfaces, their parallels, and the demo hulls.</summary>
public sealed class GeodesicAccuracyTests
{
    private const double Degree = Math.PI / 180;

    public static TheoryData<string, ISurface, Uv, double> Rays() =>
        new()
        {
            { "cylinder", new CylinderSurface(2000), new(0, 0), 40 },
            { "cone", new ConeSurface(25 * Degree), new(0, 2000), 30 },
            { "tangent surface", new HelixTangentSurface(2000, 800), new(0.2, 1500), 50 },
            { "sphere", new SphereSurface(3000), new(0.3, 0.2), 35 },
            { "torus", new TorusSurface(3000, 1200), new(0.2, 0), 55 },
            { "hypar", new HyparSurface(1.5e-4, 0.2), new(0, 100), 45 },
            { "helicoid", new HelicoidSurface(2e-4), new(0, 300), 50 },
            { "pseudosphere", new PseudosphereSurface(2000), new(0.6, 0), 20 },
            {
                "parallel hypar",
                new ParallelSurface(new HyparSurface(1.5e-4, 0.2), -30),
                new(0, 100),
                45
            },
            {
                "parallel torus",
                new ParallelSurface(new TorusSurface(3000, 1200), -14.5),
                new(0.2, 0),
                55
            },
            { "launch", Layer("survey-launch", -14.5), new(2500, 0.05), 45 },
            { "skiff", Layer("pilot-skiff", -9), new(3500, 0.05), 45 },
            { "tender", Layer("tender", -6), new(1500, 200), 40 },
        };

    /// <summary>An independent stepper in space agrees within 0.01 mm.</summary>
    [Theory]
    [MemberData(nameof(Rays))]
    public void AStepperInSpaceAgrees(string name, ISurface surface, Uv start, double degrees)
    {
        Vec3 d = Direction(surface, start, degrees);
        double length = Length(surface);
        Geodesic g = GeodesicTracing.Trace(surface, start, d, 0, length, 1e-5);
        Vec3 coarse = SpaceStepper.Walk(surface, start, d, length, 6).P,
            fine = SpaceStepper.Walk(surface, start, d, length, 3).P,
            limit = fine + ((fine - coarse) / 3);
        double miss = g.Under(length).P.ChordTo(limit);
        Assert.True(miss < 0.01, $"{name}: {miss} mm from the stepper's end");
    }

    /// <summary>The doc comment's promise: a tolerance of 1e-4 keeps the end of 3 m within 0.002 mm, and all between (dense output) no worse.</summary>
    [Theory]
    [MemberData(nameof(Rays))]
    public void TheToleranceKeepsItsPromise(string name, ISurface surface, Uv start, double degrees)
    {
        Vec3 d = Direction(surface, start, degrees);
        double length = Length(surface);
        Geodesic quick = GeodesicTracing.Trace(surface, start, d, 0, length, 1e-4),
            slow = GeodesicTracing.Trace(surface, start, d, 0, length, 1e-10);
        for (double s = 0; s <= length; s += length / 97)
        {
            double miss = quick.Under(s).P.ChordTo(slow.Under(s).P);
            Assert.True(miss < 0.002, $"{name}: {miss} mm off after {s} mm");
            double turned = quick.At(s).Tangent.ChordTo(slow.At(s).Tangent);
            Assert.True(turned < 1e-5, $"{name}: {turned} rad off after {s} mm");
            Assert.Equal(slow.At(s).A, quick.At(s).A, 1e-5);
            Assert.Equal(slow.At(s).B, quick.At(s).B, 0.01);
        }
    }

    /// <summary>Unit speed, a tangent in the tangent plane, and s that is the length of the line itself, added up from chords.</summary>
    [Theory]
    [MemberData(nameof(Rays))]
    public void ItsLengthIsItsLength(string name, ISurface surface, Uv start, double degrees)
    {
        double length = Length(surface);
        Geodesic g = GeodesicTracing.Trace(
            surface,
            start,
            Direction(surface, start, degrees),
            0,
            length,
            1e-5
        );
        double Chords(int n)
        {
            double sum = 0;
            for (int i = 0; i < n; i++)
            {
                sum += g.Under(length * i / n).P.ChordTo(g.Under(length * (i + 1) / n).P);
            }

            return sum;
        }

        // Chords fall short by the square of their length.
        double measured = ((4 * Chords(2000)) - Chords(1000)) / 3;
        Assert.True(Math.Abs(measured - length) < 0.001, $"{name}: {measured} for {length}");
        for (double s = 0; s <= length; s += length / 50)
        {
            Assert.Equal(0, g.At(s).Tangent.Dot(g.Under(s).Normal), 1e-6);
        }
    }

    /// <summary>The Jacobi fields against neighbours traced for themselves: b by a start turned, a by a start moved aside.</summary>
    [Theory]
    [MemberData(nameof(Rays))]
    public void JacobiFieldsAreWhatNeighboursDo(
        string name,
        ISurface surface,
        Uv start,
        double degrees
    )
    {
        Vec3 d = Direction(surface, start, degrees);
        SurfacePoint p = surface.At(start.U, start.V);
        Vec3 t = p.UnitTangent(d),
            left = p.Left(t);
        double length = Length(surface);
        Geodesic g = GeodesicTracing.Trace(surface, start, d, 0, length, 1e-9);
        const double turn = 1e-4;
        Vec3 Turned(double by) =>
            GeodesicTracing
                .Trace(surface, start, (Math.Cos(by) * t) + (Math.Sin(by) * left), 0, length, 1e-9)
                .Under(length)
                .P;
        Vec3 endLeft = g.Under(length).Left(g.At(length).Tangent);
        double b = (Turned(turn) - Turned(-turn)).Dot(endLeft) / (2 * turn);
        Assert.True(
            Math.Abs(b - g.At(length).B) < 1e-5 * length,
            $"{name}: b {g.At(length).B}, by neighbours {b}"
        );

        // Aside along the perpendicular geodesic; square to it there is parallel to the first.
        const double aside = 0.5;
        Geodesic across = GeodesicTracing.Trace(surface, start, left, 2 * aside, 2 * aside, 1e-9);
        Vec3 Moved(double by)
        {
            SurfacePoint q = across.Under(by);
            Vec3 along = -q.Left(across.At(by).Tangent);
            return GeodesicTracing
                .Trace(surface, across.UvAt(by), along, 0, length, 1e-9)
                .Under(length)
                .P;
        }

        double a = (Moved(aside) - Moved(-aside)).Dot(endLeft) / (2 * aside);
        Assert.True(
            Math.Abs(a - g.At(length).A) < 1e-5,
            $"{name}: a {g.At(length).A}, by neighbours {a}"
        );
    }

    /// <summary>The perpendiculars of a strip: at 40 mm a step below 1e-4 mm in 75 mm where radii are half a metre, in 150 mm where they are a metre.</summary>
    [Theory]
    [InlineData(500, 75)]
    [InlineData(1000, 150)]
    public void ShortShotsAreAsGoodAsStated(double radius, double length)
    {
        foreach (
            ISurface surface in new ISurface[]
            {
                new CylinderSurface(radius),
                new SphereSurface(radius),
                new TorusSurface(2.2 * radius, radius),
                new HelicoidSurface(1 / radius),
            }
        )
        {
            var start = new Uv(0.1, 0.2);
            Vec3 t = surface.At(start.U, start.V).UnitTangent(Direction(surface, start, 33));
            Uv shot = GeodesicTracing.Shoot(surface, start, t, length, 40).Uv,
                traced = GeodesicTracing.Trace(surface, start, t, 0, length, 1e-11).UvAt(length);
            double miss = surface.At(shot.U, shot.V).P.ChordTo(surface.At(traced.U, traced.V).P);
            Assert.True(miss < 1e-4, $"{surface}: {miss} mm off");
        }
    }

    /// <summary>A dent of 30 mm, half a metre across, in six metres of flat plate: long easy steps must not pass over it.</summary>
    [Fact]
    public void ADentInAFlatPlateIsNotSteppedOver()
    {
        var plate = new DentedPlate();
        Vec3 d = Vec3.UnitX;
        Geodesic g = GeodesicTracing.Trace(plate, new(0, 60), d, 0, 6000, 1e-5);
        Vec3 coarse = SpaceStepper.Walk(plate, new(0, 60), d, 6000, 6).P,
            fine = SpaceStepper.Walk(plate, new(0, 60), d, 6000, 3).P,
            limit = fine + ((fine - coarse) / 3);
        Assert.True(Math.Abs(limit.Y - 60) > 10, "the dent turns nothing: it tests nothing");
        double miss = g.Under(6000).P.ChordTo(limit);
        Assert.True(miss < 0.02, $"{miss} mm from the stepper's end");
    }

    /// <summary>z = −30 exp(−((x − 4250)² + y²) / 2a²), a = 120 mm.</summary>
    private sealed record DentedPlate : ISurface
    {
        public SurfacePoint At(double u, double v)
        {
            const double a2 = 120 * 120;
            double x = u - 4250,
                z = -30 * Math.Exp(-((x * x) + (v * v)) / (2 * a2));
            return AnalyticSurfaces.Point(
                new(u, v, z),
                new(1, 0, -z * x / a2),
                new(0, 1, -z * v / a2),
                new(0, 0, z * ((x * x / a2) - 1) / a2),
                new(0, 0, z * x * v / (a2 * a2)),
                new(0, 0, z * ((v * v / a2) - 1) / a2),
                1
            );
        }
    }

    /// <summary>Landing: on the level to 1e-6 mm, and where a far finer trace lands to 0.005 mm.</summary>
    [Theory]
    [InlineData("survey-launch", 45)]
    [InlineData("survey-launch", 135)]
    [InlineData("pilot-skiff", 60)]
    [InlineData("tender", 40)]
    public void ItLandsOnTheChineAndOnAStation(string name, double degrees)
    {
        Job job = LoftTests.Demo(name);
        LoftedSurface hull = HullLoft.Build(job.Offsets, job.Hull.Panel).Surface;
        var layer = new ParallelSurface(hull, -10);
        double u = hull.UFrom + (0.55 * (hull.UTo - hull.UFrom));
        var start = new Uv(u, 0.02 * hull.UpperV(u));
        Vec3 d = Direction(layer, start, degrees);
        double station = degrees < 90 ? 200 : -200;
        double Past(Uv uv) => uv.V - hull.UpperV(uv.U);
        double PastPlane(Uv uv) => layer.At(uv.U, uv.V).P.X - layer.At(u, 0).P.X - station;
        (double S, Vec3 P) Land(double tolerance, Func<Uv, double> level)
        {
            Geodesic g = GeodesicTracing.Trace(
                layer,
                start,
                d,
                0,
                4000,
                tolerance,
                uv => Past(uv) < 0
            );
            double s = g.Crossing(level, 0, g.To);
            double off = level(g.UvAt(s)) * layer.At(g.UvAt(s).U, g.UvAt(s).V).Dv.Norm;
            Assert.True(Math.Abs(off) < 1e-3 * 1e-3, $"{off} mm off the line");
            return (s, g.Under(s).P);
        }

        foreach (
            Func<Uv, double> level in new Func<Uv, double>[] { Past, uv => PastPlane(uv) / 1000 }
        )
        {
            (double s, Vec3 p) = Land(1e-4, level);
            (double exactS, Vec3 exact) = Land(1e-10, level);
            Assert.Equal(exactS, s, 0.005);
            Assert.True(p.ChordTo(exact) < 0.005);
        }
    }

    private static double Length(ISurface surface) =>
        surface is ParallelSurface { Parent: LoftedSurface } ? 1000
        : surface is PseudosphereSurface ? 1500
        : 3000;

    private static ParallelSurface Layer(string hull, double offset)
    {
        Job job = LoftTests.Demo(hull);
        return new(HullLoft.Build(job.Offsets, job.Hull.Panel).Surface, offset);
    }

    /// <summary>At an angle to the line of growing u, turned towards growing v.</summary>
    private static Vec3 Direction(ISurface surface, Uv start, double degrees)
    {
        SurfacePoint p = surface.At(start.U, start.V);
        Vec3 along = p.Du.Unit(),
            across = (p.Dv - (p.Dv.Dot(along) * along)).Unit();
        return (Math.Cos(degrees * Degree) * along) + (Math.Sin(degrees * Degree) * across);
    }
}
