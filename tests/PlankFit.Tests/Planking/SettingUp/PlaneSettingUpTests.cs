using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking.Keel;

namespace PlankFit.Tests.Planking.SettingUp;

/// <summary>Setting up on plane bottoms, against planes worked here by vectors: the deduction is t / cos of the lean, not t.</summary>
public sealed class PlaneSettingUpTests
{
    private const double Plank = 9;
    private const double Cloth = 1;
    private const double Whole = (2 * Plank) + Cloth;
    private const double Ribband = 20;
    private const double Frame = 36;
    private const double Within = 1e-6;

    public static TheoryData<double, double, OffsetsAreTo> Bottoms =>
        new()
        {
            { 20, 0, OffsetsAreTo.Outside },
            { 20, 0, OffsetsAreTo.Inside },
            { 12, 8, OffsetsAreTo.Outside },
            { 35, -10, OffsetsAreTo.Outside },
            { 55, 15, OffsetsAreTo.Inside },
        };

    /// <summary>The outward normal of the plane z = x tp + y tb.</summary>
    private static Vec3 Normal(double deadrise, double slope) =>
        new Vec3(Tan(slope), Tan(deadrise), -1).Unit();

    private static double Tan(double degrees) => Math.Tan(degrees * Math.PI / 180);

    private static SettingUpPlan Of(Job job, SettingUpSpec spec) =>
        WholeBottomTests.Planned(job with { SettingUp = spec }).SettingUp!;

    [Theory]
    [MemberData(nameof(Bottoms))]
    public void DeductionsBevelsAndFallsArePlanes(double deadrise, double slope, OffsetsAreTo to)
    {
        Vec3 n = Normal(deadrise, slope);
        double lean = Math.Asin(n.X),
            deduct = (to == OffsetsAreTo.Outside ? Whole : 0) + Ribband;
        SettingUpPlan plan = Of(
            PlaneBottom.Job(deadrise, slope, Plank, Cloth, to),
            new()
            {
                RibbandMm = Ribband,
                FrameMm = Frame,
                Frames = [new("between", 2000)],
            }
        );
        Assert.Equal(9, plan.Sections.Length);
        foreach (FrameSection section in plan.Sections)
        {
            double own = section.IsTransom ? deduct - Ribband : deduct;
            Assert.Equal(0, section.RakeDegrees, 1e-9);
            int other = section.Face == FrameFace.Forward ? 1 : -1;
            foreach (FramePlace p in section.Places)
            {
                Assert.Equal(own / Math.Cos(lean), p.DeductionMm, Within);
                Assert.Equal(other * lean * 180 / Math.PI, p.BevelDegrees, Within);
                Assert.Equal(other * Frame * Math.Tan(lean), p.FallMm, Within);
            }

            // The mould line meets the keel's plumb side, and ends square under the table's chine.
            double x = section.PositionMm,
                tb = Tan(deadrise);
            double Height(double y) =>
                (x * Tan(slope)) + ((y - PlaneBottom.KeelHalf) * tb) - (own / n.Z);
            Assert.Equal(PlaneBottom.KeelHalf, section.KeelEnd.X, Within);
            Assert.Equal(Height(PlaneBottom.KeelHalf), section.KeelEnd.Y, Within);
            Assert.Equal(PlaneBottom.ChineHalf - (own * n.Y), section.ChineEnd.X, Within);
            Assert.Equal(Height(section.ChineEnd.X), section.ChineEnd.Y, Within);
        }

        // The hull narrows going the way that its normal leans: that face bears no line, so that every bevel but the transom's is under.
        Assert.All(
            plan.Sections.Where(s => !s.IsTransom),
            s =>
            {
                Assert.Equal(n.X >= -1e-12 ? FrameFace.Forward : FrameFace.After, s.Face);
                Assert.True(s.Places[2].BevelDegrees >= -1e-9);
            }
        );
        Assert.Equal(FrameFace.After, plan.Sections.Single(s => s.IsTransom).Face);
    }

    [Fact]
    public void AFaceAskedForTurnsTheBevelRoundAndIsSaid()
    {
        SettingUpPlan plan = Of(
            PlaneBottom.Job(20, 10, Plank, Cloth, OffsetsAreTo.Outside),
            new() { Face = FrameFace.After }
        );
        Assert.All(plan.Sections, s => Assert.All(s.Places, p => Assert.True(p.BevelDegrees < -8)));
        Finding said = Assert.Single(plan.Findings, f => f.Message.Contains("standing bevels"));
        Assert.Contains("station 3", said.Message);
        Assert.Contains("the transom", said.Message);
    }

    [Theory]
    [InlineData(20, 4, 13)]
    [InlineData(15, 0, -6)]
    [InlineData(8, -5, 25)]
    public void ARakedTransomHasAPlaneOfItsOwn(double deadrise, double slope, double rake)
    {
        double tb = Tan(deadrise),
            tp = Tan(slope),
            tr = Tan(rake);

        // The chine's end on the same plane bottom, where its rise from the keel's end carries it aft by the rake.
        Job plumb = PlaneBottom.Job(deadrise, slope, Plank, Cloth, OffsetsAreTo.Outside);
        double rise = (PlaneBottom.ChineHalf - PlaneBottom.KeelHalf) * tb / (1 - (tp * tr));
        OffsetLine chine = plumb.Offsets.Find("chine")!;
        int n = chine.HeightsMm.Length;
        double keelZ = plumb.Offsets.Find("keel")!.HeightsMm[^1]!.Value;
        OffsetLine raked = chine with
        {
            PositionsMm =
            [
                .. plumb.Offsets.Stations.Take(n - 1).Select(s => (double?)s.PositionMm),
                6000 + (rise * tr),
            ],
            HeightsMm = [.. chine.HeightsMm.Take(n - 1), keelZ + rise],
        };
        SettingUpPlan plan = Of(
            plumb with
            {
                Offsets = plumb.Offsets with
                {
                    Lines = [.. plumb.Offsets.Lines.Where(l => l.Name != "chine"), raked],
                },
            },
            new() { TransomMm = 24, RibbandMm = Ribband }
        );
        FrameSection transom = plan.Sections.Single(s => s.IsTransom);
        (double sin, double cos) = Math.SinCos(rake * Math.PI / 180);
        Vec3 normal = Normal(deadrise, slope),
            up = new(sin, 0, cos),
            aft = new(cos, 0, -sin);
        double lean = Math.Asin(normal.Dot(aft));
        Assert.Equal(rake, transom.RakeDegrees, Within);
        foreach (FramePlace p in transom.Places)
        {
            Assert.Equal(Whole / Math.Cos(lean), p.DeductionMm, Within);
            Assert.Equal(-lean * 180 / Math.PI, p.BevelDegrees, Within);
            Assert.Equal(-24 * Math.Tan(lean), p.FallMm, Within);
        }

        // Heights run up the rake from the base line, z = 0.
        Vec3 origin = new(6000 - (keelZ * tr), 0, 0);
        Vec3 keel = origin + new Vec3(0, transom.KeelEnd.X, 0) + (transom.KeelEnd.Y * up);
        Assert.Equal(
            -Whole,
            (keel - new Vec3(6000, PlaneBottom.KeelHalf, keelZ)).Dot(normal),
            Within
        );
        Assert.Equal(PlaneBottom.KeelHalf, keel.Y, Within);
    }

    [Theory]
    [MemberData(nameof(Bottoms))]
    public void TheRabbetIsWhereFacesMeetTheKeelsSide(
        double deadrise,
        double slope,
        OffsetsAreTo to
    )
    {
        const double backbone = 75;
        Vec3 n = Normal(deadrise, slope);
        SettingUpPlan plan = Of(
            PlaneBottom.Job(deadrise, slope, Plank, Cloth, to),
            new() { Backbone = new BackboneWidth.Even(backbone) }
        );
        Assert.Equal(8, plan.Rabbet.Length);
        foreach (RabbetPlace r in plan.Rabbet)
        {
            double table = r.PositionMm * Tan(slope),
                plumb = 1 / -n.Z,
                outer = to == OffsetsAreTo.Outside ? 0 : -Whole * plumb,
                inner = outer + (Whole * plumb);
            Near(new(PlaneBottom.KeelHalf, table + outer), r.RabbetLine);
            Near(new(PlaneBottom.KeelHalf, table + inner), r.Middle);
            Near(
                new(backbone, table + inner + ((backbone - PlaneBottom.KeelHalf) * Tan(deadrise))),
                r.Bearding!.Value
            );
            Assert.Equal(Whole * plumb, r.DepthMm, Within);
            Assert.Equal(
                (backbone - PlaneBottom.KeelHalf) / Math.Cos(deadrise * Math.PI / 180),
                r.LandingMm!.Value,
                Within
            );
            Assert.Equal(deadrise, r.LandingDegrees, Within);
        }
    }

    /// <summary>Planks let into the keel square to themselves: the middle lies the whole thickness in, the bearding line plumb above the rabbet line.</summary>
    [Theory]
    [MemberData(nameof(Bottoms))]
    public void ARabbetSquareToThePlanksHasABeardingLineOfItsOwn(
        double deadrise,
        double slope,
        OffsetsAreTo to
    )
    {
        Vec3 n = Normal(deadrise, slope);
        Job job = PlaneBottom.Job(deadrise, slope, Plank, Cloth, to);
        SettingUpPlan plan = Of(
            job with
            {
                Hull = job.Hull with { KeelSide = KeelSide.SquareToPlank },
            },
            new()
        );

        // In the section: normals of the bottom along a straight keel line sweep a plane, whose trace is not the section's own normal where the keel slopes.
        Vec3 run = new Vec3(1, 0, Tan(slope)).Unit();
        Vec2 In(Vec3 p, double x)
        {
            Vec3 q = p + ((x - p.X) / run.X * run);
            return new(q.Y, q.Z);
        }

        foreach (RabbetPlace r in plan.Rabbet)
        {
            Vec3 table = new(r.PositionMm, PlaneBottom.KeelHalf, r.PositionMm * Tan(slope));
            double zOut = to == OffsetsAreTo.Outside ? 0 : Whole;
            Vec2 rabbet = In(table + (zOut * n), r.PositionMm),
                middle = In(table + ((zOut - Whole) * n), r.PositionMm);
            Near(rabbet, r.RabbetLine);
            Near(middle, r.Middle);
            Near(new(rabbet.X, rabbet.Y + (Whole / -n.Z)), r.Bearding!.Value);
        }
    }

    /// <summary>A backbone no wider than the keel has no bearding line, and that is said.</summary>
    [Fact]
    public void ANarrowBackboneHasNoBeardingLine()
    {
        SettingUpPlan plan = Of(
            PlaneBottom.Job(20, 0, Plank, Cloth, OffsetsAreTo.Outside),
            new() { Backbone = new BackboneWidth.Even(30) }
        );
        Assert.All(plan.Rabbet, r => Assert.Null(r.Bearding));
        Assert.Contains(plan.Findings, f => f.Message.Contains("no bearding line"));
    }

    /// <summary>A straight stringer at a distance from the keel lies in the plane: bevel asin of the normal's y, and its place by the tape.</summary>
    [Theory]
    [MemberData(nameof(Bottoms))]
    public void StringersLieInThePlane(double deadrise, double slope, OffsetsAreTo to)
    {
        const double out300 = 300;
        Vec3 n = Normal(deadrise, slope);
        Job job = PlaneBottom.Job(deadrise, slope, Plank, Cloth, to) with
        {
            Framing =
            [
                new("S", FramingKind.Stringer, new FramingLine.FromKeel(out300), 40, 500, null),
            ],
        };
        SettingUpPlan plan = Of(job, new());

        // It begins at 500: the first station has none.
        Assert.Equal(7, plan.Stringers.Length);
        (double sin, double cos) = Math.SinCos(deadrise * Math.PI / 180);
        double inner = to == OffsetsAreTo.Outside ? Whole / -n.Z : 0;
        foreach (StringerPlace s in plan.Stringers)
        {
            Near(
                new(
                    PlaneBottom.KeelHalf + (out300 * cos),
                    (s.PositionMm * Tan(slope)) + inner + (out300 * sin)
                ),
                s.Centre
            );
            double bevel = Math.Asin(n.Y);
            Assert.Equal(bevel * 180 / Math.PI, s.BevelDegrees, Within);
            Assert.Equal(40 * Math.Tan(bevel), s.FallMm, Within);

            // Between the run (1, 0, tp) and the section's own direction (0, cos, sin).
            double across = sin * Tan(slope) / Math.Sqrt(1 + (Tan(slope) * Tan(slope)));
            Assert.Equal(Math.Asin(across) * 180 / Math.PI, s.CrossDegrees, Within);
        }
    }

    private static void Near(Vec2 should, Vec2 found)
    {
        Assert.Equal(should.X, found.X, Within);
        Assert.Equal(should.Y, found.Y, Within);
    }
}
