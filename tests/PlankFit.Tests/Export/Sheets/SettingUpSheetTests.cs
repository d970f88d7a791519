using System.Collections.Immutable;
using PlankFit.Draughting.Dxf;
using PlankFit.Export.SettingUp;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Framing;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>The sheets and full-size sections for setting up, in both kinds of units, with all that a job can ask for.</summary>
public sealed class SettingUpSheetTests
{
    public static TheoryData<string> Hulls => ["survey-launch", "pilot-skiff", "tender", "piece"];

    private static readonly Dictionary<string, (Job, SettingUpPlan)> Worked = [];

    private static (Job Job, SettingUpPlan Plan) Of(string hull)
    {
        lock (Worked)
        {
            if (!Worked.TryGetValue(hull, out (Job, SettingUpPlan) worked))
            {
                Worked[hull] = worked = Work(hull);
            }

            return worked;
        }
    }

    private static (Job, SettingUpPlan) Work(string hull)
    {
        Job job = DemoPlans.Of(hull == "piece" ? "survey-launch" : hull).Job;
        job = job with
        {
            Framing =
            [
                .. job.Framing,
                new(
                    "bilge stringer",
                    FramingKind.Stringer,
                    new FramingLine.FromKeel(300),
                    40,
                    null,
                    null
                ),
                new(
                    "a frame behind",
                    FramingKind.Frame,
                    new FramingLine.AtPosition(1300),
                    30,
                    null,
                    null
                ),
            ],
            SettingUp = new()
            {
                RibbandMm = hull == "tender" ? 0 : 19.05,
                WaterlinesMm = [100, 254, 500],
                Frames = [new("own", 2000)],
                ChineLogMm = 38.1,
                Backbone = new BackboneWidth.Even(65),
                ChinePiece = hull == "piece" ? new(60, 50) : null,
                Topside = new(
                    9.525,
                    ChineLap.BottomLapsTopside,
                    new TopsideSlope.Flare([new(null, 12)])
                )
                {
                    MitreForwardOfMm = 1500,
                },
            },
        };
        return (job, WholeBottomTests.Planned(job).SettingUp!);
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void SheetsAreLegible(string hull)
    {
        (Job job, SettingUpPlan plan) = Of(hull);
        ImmutableArray<Drawing> pages = SettingUpPages.Of(job, plan);
        Assert.True(pages.Length >= 7, $"{pages.Length} pages");
        None(
            pages.SelectMany(p =>
                SheetCheck.Faults(p).Concat(SheetCheck.Struck(p, t => t.Text != "frame"))
            )
        );
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void SectionsAreLegible(string hull)
    {
        (Job job, SettingUpPlan plan) = Of(hull);
        Drawing[] sections = [.. plan.Sections.Select(s => SectionDrawing.OnPaper(job, plan, s))];
        Assert.True(sections.Length >= 10);
        None(sections.SelectMany(p => SheetCheck.Faults(p)));
    }

    /// <summary>A job that names no topside, no backbone and no stringer still has sheets, and they say what is wanting.</summary>
    [Fact]
    public void TheLeastThatCanBeAskedFor()
    {
        Job job = DemoPlans.Of("pilot-skiff").Job with { SettingUp = new(), Framing = [] };
        SettingUpPlan plan = WholeBottomTests.Planned(job).SettingUp!;
        ImmutableArray<Drawing> pages = SettingUpPages.Of(job, plan);
        Assert.Contains(
            pages.SelectMany(p => p.Shapes.OfType<Lettering>()),
            t => t.Text.Contains("No topside")
        );
        None(pages.SelectMany(p => SheetCheck.Faults(p)));
        Assert.Empty(plan.Chine);
        Assert.Empty(plan.Stringers);
    }

    /// <summary>In the file for the router the middle line is x = 0 and the base line y = 0, and the mould line stands on "cut".</summary>
    [Fact]
    public void TheMouldLineIsWhereItIs()
    {
        (Job job, SettingUpPlan plan) = Of("survey-launch");
        FrameSection section = plan.Sections.Single(s => s.Name == "6");
        Drawing drawing = SectionDrawing.AtOrigin(job, plan, section);
        // Last drawn, so that it lies over all else: the bottom's; before it the topside's, which goes on from its end.
        Polyline[] cut =
        [
            .. drawing.Shapes.OfType<Polyline>().Where(p => p.Layer == "cut").Reverse(),
        ];
        Assert.Equal(2, cut.Length);
        Assert.InRange(section.KeelEnd.ChordTo(cut[0].Points[0]), 0, 1e-9);
        Assert.InRange(section.ChineEnd.ChordTo(cut[0].Points[^1]), 0, 1e-9);
        Assert.InRange(section.ChineEnd.ChordTo(cut[1].Points[0]), 0, 1e-9);
        Drawing paper = SectionDrawing.OnPaper(job, plan, section);
        Assert.All(
            paper.Shapes.OfType<Polyline>().SelectMany(p => p.Points),
            p => Assert.True(p.X >= 0 && p.Y >= 0 && p.X <= paper.WidthMm && p.Y <= paper.HeightMm)
        );
    }

    [Theory]
    [InlineData(DxfVersion.R12)]
    [InlineData(DxfVersion.R2000)]
    public void EzdxfFindsNothingToMend(DxfVersion version)
    {
        const string audit = """
            import sys
            try:
                import ezdxf
            except ImportError:
                print("MISSING")
                sys.exit(0)
            for name in sys.argv[1:]:
                document = ezdxf.readfile(name)
                audit = document.audit()
                cut = [e for e in document.modelspace() if e.dxf.layer == "CUT"]
                line = cut[-1]
                x, y = list(line.vertices() if line.dxftype() == "LWPOLYLINE" else (p.vec2 for p in line.points()))[0]
                print(len(audit.errors), len(audit.fixes), len(cut), "%.4f %.4f" % (x, y))
            """;
        (Job job, SettingUpPlan plan) = Of("pilot-skiff");
        FrameSection section = plan.Sections.Single(s => s.Name == "5");
        using var folder = new TempFolder();
        string file = folder.File("section.dxf");
        using (FileStream stream = File.Create(file))
        {
            DxfWriter.Write(
                stream,
                SectionDrawing.AtOrigin(job, plan, section),
                new(version, DxfUnit.Millimetre)
            );
        }

        string read = OutsideTool
            .Run("/usr/bin/python3", "python3 python3-ezdxf", "-c", audit, file)
            .Trim();
        Assert.SkipWhen(read == "MISSING", "ezdxf is not installed: apt-get install python3-ezdxf");
        Vec2 keel = section.KeelEnd;
        Assert.Equal(FormattableString.Invariant($"0 0 2 {keel.X:0.0000} {keel.Y:0.0000}"), read);
    }

    private static void None(IEnumerable<string> faults)
    {
        string[] all = [.. faults];
        Assert.True(all.Length == 0, $"{all.Length} faults:\n" + string.Join("\n", all.Take(40)));
    }
}
