using PlankFit.Export.SettingUp;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking.Keel;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.SettingUp;

/// <summary>
/// Frames that stand on one side of the boat only, or go only part of the way from keel to chine, on a plane bottom of deadrise b: the mould line is straight, so much
/// within the table's line as the planking is thick, and its ends lie where a tape from the keel's side has them.
/// </summary>
public sealed class PartFramesTests
{
    private const double Deadrise = 20,
        Plank = 9,
        Cloth = 1,
        Whole = (2 * Plank) + Cloth,
        From = 150,
        To = 430;

    private static readonly FramingSpec Knee = new(
        "knee",
        FramingKind.Frame,
        new FramingLine.AtPosition(2000),
        30,
        null,
        null
    )
    {
        Only = Side.Port,
        OutFromMm = From,
        OutToMm = To,
    };

    private static Job Job(params FramingSpec[] frames) =>
        PlaneBottom.Job(Deadrise, 0, Plank, Cloth, OffsetsAreTo.Outside) with
        {
            SettingUp = new() { FrameMm = 36 },
            Framing = [.. frames],
        };

    private static SettingUpPlan Of(params FramingSpec[] frames) =>
        WholeBottomTests.Planned(Job(frames)).SettingUp!;

    [Fact]
    public void ItsMouldLineIsItsOwnStretch()
    {
        SettingUpPlan whole = Of(),
            plan = Of(Knee);
        Assert.Equal(whole.Sections.Length + 1, plan.Sections.Length);
        FrameSection knee = Assert.Single(plan.Sections, s => s.Name == "knee"),
            station = whole.Sections[3];
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(Deadrise));
        // All sections of the plane are alike: along its inner face from where a whole frame's mould line meets the keel's side.
        Vec2 along = new(cos, sin);
        Near(station.KeelEnd + (From * along), knee.KeelEnd);
        Near(station.KeelEnd + (To * along), knee.ChineEnd);
        Assert.Equal(To - From, Length([.. knee.Lines.Mould]), 1e-6);
        Assert.All(
            knee.Places,
            p =>
            {
                Assert.Equal(Whole, p.DeductionMm, 1e-6);
                Assert.Equal(0, p.BevelDegrees, 1e-6);
                Assert.Equal(0, p.FallMm, 1e-6);
            }
        );
        foreach ((int i, FramePlace p) in knee.Places.Index())
        {
            Near(station.KeelEnd + ((From + ((To - From) * i / 4)) * along), p.Mould);
        }
    }

    /// <summary>Nearly to the chine it still ends where it is said to, and both of its faces have the same stretch.</summary>
    [Theory]
    [InlineData(150, 430)]
    [InlineData(5, 900)]
    [InlineData(600, 850)]
    public void BothFacesEndWhereItWasSaid(double from, double to)
    {
        FrameSection knee = Of(Knee with { OutFromMm = from, OutToMm = to })
            .Sections.Single(s => s.Name == "knee");
        Assert.Equal(to - from, Length([.. knee.Lines.Mould]), 1e-6);
        Near(knee.Lines.Mould[0], knee.Lines.OtherFace[0]);
        Near(knee.Lines.Mould[^1], knee.Lines.OtherFace[^1]);
    }

    /// <summary>Letters cover in the mirror what they would cover if they were mirrored themselves, and a circle is where its mirror image is.</summary>
    [Theory]
    [InlineData(Anchor.BaselineLeft, 0)]
    [InlineData(Anchor.BaselineRight, 0)]
    [InlineData(Anchor.MiddleLeft, 30)]
    [InlineData(Anchor.MiddleRight, -70)]
    [InlineData(Anchor.MiddleCentre, 90)]
    public void LettersStandWhereTheirMirrorImageIs(Anchor anchor, double turned)
    {
        var text = new Lettering("t", Pen.Thin, new(40, 12), "AEHM", 3, anchor)
        {
            TurnDegrees = turned,
        };
        Vec2[] own = [.. SheetCheck.Corners(text)],
            port = [.. SheetCheck.Corners((Lettering)PortHalf.Of(text))];
        foreach (Vec2 corner in own)
        {
            Vec2 mirrored = new(-corner.X, corner.Y);
            Assert.True(
                port.Min(p => p.ChordTo(mirrored)) < 1e-6,
                $"{mirrored} is none of {string.Join(", ", port)}"
            );
        }

        var circle = new CircleShape("c", Pen.Thin, new(7, 3), 2);
        Assert.Equal(new(-7, 3), ((CircleShape)PortHalf.Of(circle)).Centre);
    }

    /// <summary>
    /// Where the hull narrows: a knee 18 wide about 1500 is sawn as a whole frame 18 thick is that has its face at 1491 or at 1509, whichever the bevel asks for, and
    /// not as frames of 36 are with their face at 1500.
    /// </summary>
    [Fact]
    public void ItHasItsOwnWidthAboutItsOwnLine()
    {
        PlankFit.Planking.Whole.Job launch = DemoPlans.Of("survey-launch").Job;
        SettingUpSpec asked = launch.SettingUp ?? new();
        FramingSpec knee = Knee with
        {
            Line = new FramingLine.AtPosition(1500),
            WidthMm = 18,
            OutFromMm = null,
            OutToMm = null,
        };
        FrameSection Section(FramingSpec[] behind, SettingUpSpec spec, string name) =>
            BottomPlanner
                .Plan(launch with { SettingUp = spec, Framing = [.. behind] })
                .Plan!.SettingUp!.Sections.Single(s => s.Name == name);
        FrameSection part = Section([knee], asked with { FrameMm = 36 }, "knee");
        double at = part.Face == FrameFace.Forward ? 1491 : 1509;
        Assert.Equal(at, part.PositionMm, 1e-9);
        Assert.Equal(18, part.ThicknessMm);
        FrameSection whole = Section(
            [],
            asked with
            {
                FrameMm = 18,
                Frames = [new("whole", at)],
                Face = part.Face,
            },
            "whole"
        );
        Assert.True(whole.Places[2].FallMm > 1, "the hull is too straight there to tell");
        foreach ((FramePlace p, FramePlace w) in part.Places.Zip(whole.Places))
        {
            Near(w.Mould, p.Mould);
            Assert.Equal(w.FallMm, p.FallMm, 1e-6);
            Assert.Equal(w.BevelDegrees, p.BevelDegrees, 1e-6);
            Assert.Equal(w.DeductionMm, p.DeductionMm, 1e-6);
        }
    }

    /// <summary>Nothing of the whole frames, of keel, chine or stringers changes by it; a frame at a station that one side has is a frame of its own.</summary>
    [Fact]
    public void WhatIsWholeStaysAsItIs()
    {
        FramingSpec atStation = Knee with
        {
            Name = "web",
            Line = new FramingLine.AtStation("2"),
            OutFromMm = null,
            OutToMm = null,
            Only = Side.Starboard,
        };
        SettingUpPlan whole = Of(),
            plan = Of(Knee, atStation, Knee with { Name = "frame 2a", Only = Side.Starboard });
        Assert.Equal(
            whole.Sections.Select(s => s.Label),
            plan.Sections.Where(s => s.Only is null).Select(s => s.Label)
        );
        Assert.Equal(
            ["frame 2a", "frame knee", "frame web"],
            plan.Sections.Where(s => s.Only is not null).Select(s => s.Label).Order()
        );
        Assert.Equal(whole.Rabbet.Length, plan.Rabbet.Length);
        Assert.Equal(whole.Chine.Length, plan.Chine.Length);
        FrameSection web = plan.Sections.Single(s => s.Name == "web"),
            station = plan.Sections.Single(s => s.Name == "2");
        Near(station.KeelEnd, web.KeelEnd);
        Near(station.ChineEnd, web.ChineEnd);
    }

    /// <summary>To port of the middle line, each point where starboard's would be mirrored, its words the right way round, and its side said.</summary>
    [Fact]
    public void APortFrameIsDrawnToPort()
    {
        Job job = Job(Knee);
        SettingUpPlan plan = Of(Knee, Knee with { Name = "twin", Only = Side.Starboard });
        Drawing port = SectionDrawing.AtOrigin(job, plan, Section("knee")),
            starboard = SectionDrawing.AtOrigin(job, plan, Section("twin"));
        Vec2[] Mould(Drawing d) =>
            [
                .. d
                    .Shapes.OfType<Polyline>()
                    .First(l => l.Layer == PlankFit.Draughting.Layout.Layers.Cut)
                    .Points,
            ];
        Assert.All(Mould(port), p => Assert.True(p.X < 0));
        foreach ((Vec2 p, Vec2 s) in Mould(port).Zip(Mould(starboard)))
        {
            Near(new(-s.X, s.Y), p);
        }

        string words = string.Join(' ', port.Shapes.OfType<Lettering>().Select(l => l.Text));
        Assert.Contains("Frame knee (port only), port half", words, StringComparison.Ordinal);
        Assert.Contains("I, inner end: deduct 19 mm", words, StringComparison.Ordinal);
        foreach (FrameSection s in new[] { Section("knee"), Section("twin") })
        {
            Assert.Empty(SheetCheck.Faults(SectionDrawing.OnPaper(job, plan, s)));
        }

        Assert.Contains(
            "frame knee (port only)",
            string.Join(
                ' ',
                SettingUpPages
                    .Of(job, plan)
                    .SelectMany(p => p.Shapes.OfType<Lettering>())
                    .Select(l => l.Text)
            ),
            StringComparison.Ordinal
        );
        FrameSection Section(string name) => plan.Sections.Single(s => s.Name == name);
    }

    private static double Length(Vec2[] line) =>
        line.Zip(line.Skip(1), (a, b) => a.ChordTo(b)).Sum();

    private static void Near(Vec2 should, Vec2 there) =>
        Assert.True(should.ChordTo(there) < 1e-5, $"{there} and not {should}");
}
