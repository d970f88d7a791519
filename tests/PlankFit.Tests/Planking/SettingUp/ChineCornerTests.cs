using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking.Keel;

namespace PlankFit.Tests.Planking.SettingUp;

/// <summary>The corner at the chine: closed forms, and planes intersected by vectors in space.</summary>
public sealed class ChineCornerTests
{
    /// <summary>The round touches both faces: tangent length r tan((180 − angle) / 2), and the middle of the arc lies r (1 / sin(angle/2) − 1) off the edge.</summary>
    [Theory]
    [InlineData(90, 8)]
    [InlineData(112.5, 8)]
    [InlineData(140, 12)]
    [InlineData(75, 6)]
    public void TheRoundTouchesBothFaces(double angle, double radius)
    {
        var corner = ChineCorner.Of(
            angle,
            19,
            12,
            OffsetsAreTo.Outside,
            ChineLap.Mitre,
            radius,
            null
        );
        double half = angle * Math.PI / 360,
            tangent = radius * Math.Tan((180 - angle) / 2 * Math.PI / 180);
        Assert.Equal(tangent, corner.Rounded.TangentMm, 1e-9);
        Assert.Equal(radius * ((1 / Math.Sin(half)) - 1), corner.Rounded.OffMm, 1e-9);

        // Drawn: it begins on the bottom's outer face and ends on the topside's, as far from the edge, and never leaves the wood.
        ImmutableArray<Vec2> arc = corner.Round(radius);
        Vec2 up = new(-Math.Cos(2 * half), -Math.Sin(2 * half));
        Assert.Equal(0, (arc[0] - new Vec2(-tangent, 0)).Norm, 1e-9);
        Assert.Equal(0, (arc[^1] - (tangent * up)).Norm, 1e-9);
        Assert.Equal(corner.Rounded.OffMm, arc.Min(p => p.Norm), 1e-9);
        Assert.All(
            arc,
            p => Assert.True(p.Y < 1e-9 && up.Cross(p) < 1e-9 == up.Cross(new(-1, 0)) < 0)
        );
    }

    /// <summary>Square corners, by eye.</summary>
    [Fact]
    public void ASquareCornerIsWhatACarpenterWouldSay()
    {
        ChineCorner Of(ChineLap lap, ChinePieceSpec? piece = null) =>
            ChineCorner.Of(90, 19, 12, OffsetsAreTo.Outside, lap, 8, piece);
        Assert.Equal((0, 0), Trim(Of(ChineLap.BottomLapsTopside)));
        Assert.Equal((-12, -12), Trim(Of(ChineLap.TopsideLapsBottom)));
        Assert.Equal((0, -12), Trim(Of(ChineLap.Mitre)));
        Assert.Equal(Math.Atan2(12, 19) * 180 / Math.PI, Of(ChineLap.Mitre).TrimBevelDegrees, 1e-9);
        Assert.Equal((-30, -30), Trim(Of(ChineLap.Mitre, new(30, 40))));
        (double bottom, double up) = Of(ChineLap.Mitre, new(30, 40)).PieceInner!.Value;
        Assert.Equal(18, bottom, 1e-9);
        Assert.Equal(21, up, 1e-9);
        Assert.True(Of(ChineLap.Mitre, new(30, 40)).PieceHolds);
        Assert.False(Of(ChineLap.Mitre, new(11, 40)).PieceHolds);
        Assert.False(Of(ChineLap.Mitre, new(30, 18)).PieceHolds);

        // To the inside: the table's chine is the inner corner, and all lies as much further out.
        var inside = ChineCorner.Of(
            90,
            19,
            12,
            OffsetsAreTo.Inside,
            ChineLap.BottomLapsTopside,
            8,
            null
        );
        Assert.Equal((12, 12), Trim(inside));
    }

    private static (double, double) Trim(ChineCorner c) =>
        (Math.Round(c.Trim.OuterMm, 9), Math.Round(c.Trim.InnerMm, 9));

    /// <summary>On a plane bottom with a flared topside: the corner is the dihedral of the planes, and the trim lines are where the planes meet.</summary>
    [Theory]
    [InlineData(20, 0, 12, OffsetsAreTo.Outside, ChineLap.BottomLapsTopside)]
    [InlineData(12, 6, 25, OffsetsAreTo.Outside, ChineLap.TopsideLapsBottom)]
    [InlineData(35, -8, 5, OffsetsAreTo.Inside, ChineLap.Mitre)]
    [InlineData(8, 12, -4, OffsetsAreTo.Inside, ChineLap.BottomLapsTopside)]
    public void TrimLinesAreWherePlanesMeet(
        double deadrise,
        double slope,
        double flare,
        OffsetsAreTo to,
        ChineLap lap
    )
    {
        const double whole = 19,
            topside = 12,
            ribband = 15;
        (double sin, double cos) = Math.SinCos(flare * Math.PI / 180);
        double tp = Math.Tan(slope * Math.PI / 180),
            tb = Math.Tan(deadrise * Math.PI / 180);
        Vec3 nb = new Vec3(tp, tb, -1).Unit(),
            along = new Vec3(1, 0, tp).Unit(),
            nt = new Vec3(-tp * sin, cos, -sin);

        // Square to the chine and to the topside's line up the section, and outboard.
        nt = nt.Unit();
        Assert.Equal(0, nt.Dot(new(0, sin, cos)), 1e-12);
        nt = along.Cross(new(0, sin, cos)).Unit();
        nt = nt.Y < 0 ? -nt : nt;
        SettingUpPlan plan = WholeBottomTests
            .Planned(
                PlaneBottom.Job(deadrise, slope, 9, 1, to) with
                {
                    SettingUp = new()
                    {
                        RibbandMm = ribband,
                        Topside = new(topside, lap, new TopsideSlope.Flare([new(null, flare)])),
                    },
                }
            )
            .SettingUp!;
        Assert.Equal(8, plan.Chine.Length);
        double zOut = to == OffsetsAreTo.Outside ? 0 : whole,
            kOut = to == OffsetsAreTo.Outside ? 0 : topside;
        Vec3 outward = nb.Cross(along).Unit();
        outward = outward.Y < 0 ? -outward : outward;

        // How far out along the bottom's face at z the topside's face at k is met.
        double Met(double z, double k) => (k - (z * nb.Dot(nt))) / outward.Dot(nt);
        double kOuterEnd = lap == ChineLap.TopsideLapsBottom ? kOut - topside : kOut,
            kInnerEnd = lap == ChineLap.BottomLapsTopside ? kOut : kOut - topside;
        foreach (ChinePlace c in plan.Chine)
        {
            Assert.Equal(
                180 - (Math.Acos(nb.Dot(nt)) * 180 / Math.PI),
                c.Corner.CornerDegrees,
                1e-6
            );
            Assert.Equal(deadrise, c.DeadriseDegrees, 1e-6);
            Assert.Equal(flare, c.FlareDegrees, 1e-6);
            Assert.Equal(Met(zOut, kOuterEnd), c.Corner.Trim.OuterMm, 1e-6);
            Assert.Equal(Met(zOut - whole, kInnerEnd), c.Corner.Trim.InnerMm, 1e-6);
        }

        // The frame's corner lies on both mould planes.
        foreach (FrameSection s in plan.Sections.Where(s => !s.IsTransom))
        {
            Vec3 chine =
                    new(
                        s.PositionMm,
                        PlaneBottom.ChineHalf,
                        (s.PositionMm * tp) + ((PlaneBottom.ChineHalf - PlaneBottom.KeelHalf) * tb)
                    ),
                end = new(s.PositionMm, s.ChineEnd.X, s.ChineEnd.Y);
            Assert.Equal(zOut - whole - ribband, (end - chine).Dot(nb), 1e-6);
            Assert.Equal(kOut - topside - ribband, (end - chine).Dot(nt), 1e-6);

            // What is drawn of the corner lies in the section and on its planes.
            CornerLines lines = s.Lines.Corner!;
            Vec2 edge = lines.TopsideOuter[0];
            Assert.Equal(zOut, (new Vec3(s.PositionMm, edge.X, edge.Y) - chine).Dot(nb), 1e-6);
            Assert.Equal(kOut, (new Vec3(s.PositionMm, edge.X, edge.Y) - chine).Dot(nt), 1e-6);
            Assert.Equal(0, (lines.TopsideMould[0] - s.ChineEnd).Norm, 1e-6);
        }
    }

    /// <summary>The topside's slope from a sheer line gives the same corner as the flare that the line has.</summary>
    [Fact]
    public void ASheerLineAndItsFlareAgree()
    {
        Job job = PlaneBottom.Job(20, 5, 9, 1, OffsetsAreTo.Outside);
        OffsetLine chine = job.Offsets.Find("chine")!;
        double tan = Math.Tan(17 * Math.PI / 180);
        var sheer = new OffsetLine(
            "sheer",
            [],
            [.. chine.HeightsMm.Select(h => h + 400)],
            [.. chine.HalfBreadthsMm.Select(b => b + (400 * tan))]
        );
        ImmutableArray<ChinePlace> Of(TopsideSlope slope) =>
            WholeBottomTests
                .Planned(
                    job with
                    {
                        Offsets = job.Offsets with { Lines = [.. job.Offsets.Lines, sheer] },
                        SettingUp = new() { Topside = new(12, ChineLap.Mitre, slope) },
                    }
                )
                .SettingUp!.Chine;
        ImmutableArray<ChinePlace> drawn = Of(new TopsideSlope.ToLine("sheer"));
        ImmutableArray<ChinePlace> given = Of(new TopsideSlope.Flare([new("0", 17), new("7", 17)]));
        Assert.Equal(8, drawn.Length);
        foreach ((ChinePlace a, ChinePlace b) in drawn.Zip(given))
        {
            Assert.Equal(17, a.FlareDegrees, 1e-6);
            Assert.Equal(b.Corner.CornerDegrees, a.Corner.CornerDegrees, 1e-6);
            Assert.Equal(b.Corner.Trim.InnerMm, a.Corner.Trim.InnerMm, 1e-6);
        }
    }

    [Fact]
    public void FlareRunsStraightBetweenItsStations()
    {
        ImmutableArray<ChinePlace> chine = WholeBottomTests
            .Planned(
                PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Outside) with
                {
                    SettingUp = new()
                    {
                        Topside = new(
                            12,
                            ChineLap.Mitre,
                            new TopsideSlope.Flare([new("1", 30), new("5", 10)])
                        ),
                    },
                }
            )
            .SettingUp!.Chine;

        // Stations at 0, 900, 1700, 2600, 3400, 4300, 5100, 6000; the loft's u is x here, keel and chine being straight.
        double[] should = [30, 30, 30 - (20 * 800 / 3400.0), 30 - (20 * 1700 / 3400.0)];
        for (int i = 0; i < should.Length; i++)
        {
            Assert.Equal(should[i], chine[i].FlareDegrees, 1e-6);
        }

        Assert.Equal(10, chine[^1].FlareDegrees, 1e-6);
    }

    /// <summary>Planks left long by less than the corner asks are told, once, by how much.</summary>
    [Fact]
    public void PlanksTooShortForTheCornerAreTold()
    {
        BottomPlan Of(double by) =>
            WholeBottomTests.Planned(
                PlaneBottom.Job(10, 0, 9, 1, OffsetsAreTo.Inside) with
                {
                    Ends = EndRules.Default with { Upper = EndRule.LeftLong(by) },
                    SettingUp = new()
                    {
                        Topside = new(
                            12,
                            ChineLap.BottomLapsTopside,
                            new TopsideSlope.Flare([new(null, 20)])
                        ),
                    },
                }
            );

        // Corner 180 − (90 − 10 − 20 turned) = 120 degrees: the inner face ends 12 / sin 120 past, 13.86.
        Assert.Contains(
            Of(5).Findings,
            f => f.Where.StartsWith("chine") && f.Message.Contains("too short")
        );
        Assert.DoesNotContain(Of(25).Findings, f => f.Message.Contains("too short"));
    }
}
