using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.SettingUp;

/// <summary>
/// Deductions and bevels on H2 (z = y (0.2 + 0.1 x), warped) and H3 (constant deadrise, rockered keel), metres there, against feet and
/// normals found here by bisection on the hulls' own formulas.
/// </summary>
public sealed class AnalyticSettingUpTests
{
    private const double Whole = 19;
    private const double Ribband = 25;
    private const double Frame = 30;

    private delegate Vec3 Outward(double x, double y);

    private delegate double Height(double x, double y);

    [Fact]
    public void TheWarpedBottom()
    {
        const double k = 1e-4;
        OffsetTable hull = Table(7, x => 0, 0, (x, y) => y * (0.2 + (k * x)));
        Held(
            hull,
            (x, y) => y * (0.2 + (k * x)),
            (x, y) => new Vec3(k * y, 0.2 + (k * x), -1).Unit(),
            1e-6
        );
    }

    /// <summary>The loft follows the rocker by a spline through 49 stations: within 1e-5 mm of it.</summary>
    [Fact]
    public void TheRockeredBottomOfConstantDeadrise()
    {
        double tb = Math.Tan(20 * Math.PI / 180);
        static double Keel(double x) => 300 * (x / 6000) * (x / 6000);
        double Z(double x, double y) => Keel(x) + (y * tb);
        OffsetTable hull = Table(49, Keel, 0, Z);
        Held(hull, Z, (x, y) => new Vec3(600 * x / 36e6, tb, -1).Unit(), 1e-5);
    }

    private static void Held(OffsetTable table, Height height, Outward normal, double within)
    {
        BottomPlan planned = WholeBottomTests.Planned(
            Job(table) with
            {
                SettingUp = new()
                {
                    RibbandMm = Ribband,
                    FrameMm = Frame,
                    Frames = [new("a", 1234), new("b", 4321)],
                },
            }
        );
        SettingUpPlan plan = planned.SettingUp!;
        Assert.Equal(table.Stations.Length + 2, plan.Sections.Length);
        int bevelled = 0;
        foreach (FrameSection s in plan.Sections)
        {
            double t = Whole + (s.IsTransom ? 0 : Ribband);
            int other = s.Face == FrameFace.Forward ? 1 : -1;
            foreach (FramePlace p in s.Places)
            {
                double x = s.PositionMm,
                    y = 1000 * p.Part;
                Vec2 drawn = new(y, height(x, y));
                Vec3 n0 = normal(x, y);
                Vec2 outward = new Vec2(n0.Y, n0.Z).Unit();
                (double d, Vec3 foot) = In(x, drawn, outward, t, height, normal);
                Assert.Equal(d, p.DeductionMm, within);
                Assert.Equal(0, (p.Mould - (drawn - (d * outward))).Norm, within);
                Vec3 n = normal(foot.X, foot.Y);
                Assert.Equal(Math.Asin(other * n.X) * 180 / Math.PI, p.BevelDegrees, within);

                // The fall to the other face: the same search from the mould line, in its plane.
                Vec2 edge = new Vec2(n.Y, n.Z).Unit();
                (double fall, _) = In(x + (other * Frame), p.Mould, edge, t, height, normal);
                Assert.Equal(fall, p.FallMm, within);
                bevelled += Math.Abs(p.BevelDegrees) > 1 ? 1 : 0;
            }
        }

        Assert.True(bevelled > 10, $"{bevelled} places with a bevel to speak of");
    }

    /// <summary>How far in from a place of the plane at x, against a direction, the surface at t inside lies, and its foot on the hull.</summary>
    private static (double Mm, Vec3 Foot) In(
        double x,
        Vec2 from,
        Vec2 outward,
        double t,
        Height height,
        Outward normal
    )
    {
        // For a foot's y, its x such that the place t inside it lies in the plane.
        double FootX(double y) => Bisect(f => f - (t * normal(f, y).X) - x, x - 60, x + 60);
        (Vec2 Place, Vec3 Foot) At(double y)
        {
            double f = FootX(y);
            Vec3 foot = new(f, y, height(f, y)),
                inner = foot - (t * normal(f, y));
            return (new(inner.Y, inner.Z), foot);
        }

        double found = Bisect(y => (At(y).Place - from).Cross(outward), from.X - 80, from.X + 80);
        (Vec2 place, Vec3 at) = At(found);
        return ((from - place).Dot(outward), at);
    }

    private static double Bisect(Func<double, double> f, double low, double high)
    {
        bool rising = f(low) < 0;
        Assert.NotEqual(rising, f(high) < 0);
        for (int i = 0; i < 70; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = f(middle) < 0 == rising ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    /// <summary>H2 to the inside, so that the inner face is the table's own: a stringer at a distance from the keel, its run and the normal in closed form.</summary>
    [Fact]
    public void AStringerOfTheWarpedBottom()
    {
        const double k = 1e-4,
            s = 600;
        OffsetTable table = Table(7, _ => 0, 0, (x, y) => y * (0.2 + (k * x)));
        Job job = Job(table);
        SettingUpPlan plan = WholeBottomTests
            .Planned(
                job with
                {
                    Hull = job.Hull with { OffsetsAreTo = OffsetsAreTo.Inside },
                    Framing =
                    [
                        new("S", FramingKind.Stringer, new FramingLine.FromKeel(s), 50, null, null),
                    ],
                    SettingUp = new(),
                }
            )
            .SettingUp!;
        Assert.Equal(7, plan.Stringers.Length);
        foreach (StringerPlace p in plan.Stringers)
        {
            double c = 0.2 + (k * p.PositionMm),
                root = Math.Sqrt(1 + (c * c)),
                y = s / root;
            Assert.Equal(y, p.Centre.X, 1e-6);
            Assert.Equal(y * c, p.Centre.Y, 1e-6);
            Vec3 run = new Vec3(
                    1,
                    -s * c * k / (root * root * root),
                    s * k / (root * root * root)
                ).Unit(),
                n = new Vec3(k * y, c, -1).Unit();
            double bevel = Math.Asin(n.Dot(new Vec3(-run.Y, run.X, 0).Unit()));
            Assert.Equal(bevel * 180 / Math.PI, p.BevelDegrees, 1e-5);
            Assert.Equal(50 * Math.Tan(bevel), p.FallMm, 1e-5);
            Assert.Equal(
                Math.Asin(run.Dot(new Vec3(0, 1, c).Unit())) * 180 / Math.PI,
                p.CrossDegrees,
                1e-5
            );
        }
    }

    private static Job Job(OffsetTable table) =>
        new(
            new PlankingJob(
                LengthUnit.Millimetre,
                table,
                new("keel", "chine", [], OffsetsAreTo.Outside, KeelSide.SquareToPlank),
                [
                    PlankLayer.Of("skin", 9, 150, Heads.Aft, 45, null, Hold.Width, 7.5, 0.5, null),
                    new ClothLayerSpec("cloth", 1),
                    PlankLayer.Of(
                        "outer",
                        9,
                        150,
                        Heads.Forward,
                        45,
                        null,
                        Hold.Width,
                        7.5,
                        0.5,
                        null
                    ),
                ],
                EndRules.Default,
                BendLimits.Default
            )
        );

    private static OffsetTable Table(
        int stations,
        Func<double, double> keel,
        double keelHalf,
        Height height
    )
    {
        double[] xs = [.. Enumerable.Range(0, stations).Select(i => 6000.0 * i / (stations - 1))];
        return new(
            [.. xs.Select((x, i) => new Station($"{i}", x))],
            [
                new(
                    "keel",
                    [],
                    [.. xs.Select(x => (double?)keel(x))],
                    [.. xs.Select(_ => (double?)keelHalf)]
                ),
                new(
                    "chine",
                    [],
                    [.. xs.Select(x => (double?)height(x, 1000))],
                    [.. xs.Select(_ => (double?)1000)]
                ),
            ]
        );
    }
}
