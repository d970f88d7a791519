using System.Globalization;
using System.Text.Json;
using PlankFit.App.Explaining;
using PlankFit.App.Laying;
using PlankFit.App.Running;
using PlankFit.Draughting.Files;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Laying;
using PlankFit.Tests.Support;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Core;

namespace PlankFit.Tests.App;

/// <summary>The whole job from its two files to all its results, read back with other people's readers.</summary>
public sealed class LayRunTests : IClassFixture<LaidLaunch>
{
    private readonly LaidLaunch launch;

    public LayRunTests(LaidLaunch launch) => this.launch = launch;

    [Fact]
    public void EverythingThatTheBenchNeedsIsThere()
    {
        Assert.Equal(ExitCode.Done, launch.Report.Exit);
        string[] needed =
        [
            "planking.json",
            "bench-book.pdf",
            "tables/plank-list.csv",
            "tables/tables.xlsx",
            "sheets/plank-list.pdf",
            "sheets/plank-cards.pdf",
            "sheets/check-before-sawing.pdf",
            "sheets/bottom-laid-flat.pdf",
            "drawings/plan-layer-1.svg",
            "drawings/plan-layer-2.png",
            "full-size/layer-1-starboard.pdf",
            "full-size/bottom-laid-flat.svg",
            "dxf/r12/S1-07.dxf",
            "dxf/layer-2-port.dxf",
            "summary.txt",
        ];
        Assert.All(
            needed,
            n => Assert.True(new FileInfo(Path.Combine(launch.Folder, n)).Length > 0, n)
        );
        Assert.DoesNotContain(
            Directory.EnumerateFiles(launch.Folder, "*", SearchOption.AllDirectories),
            f => f.Contains("writing", StringComparison.Ordinal)
        );
    }

    public static TheoryData<string> DxfFolders => LongRuns.FirstOf("dxf", "dxf/r12");

    /// <summary>ezdxf opens every plank's file with no error and no fix, and its outlines are the flat shapes of planking.json: their corners, and chords that keep
    /// within 0.01 mm of the shape, of which planking.json has 0.002.</summary>
    [Theory]
    [MemberData(nameof(DxfFolders))]
    public void EveryDxfHoldsTheShapeToSaw(string dxf)
    {
        using var planking = JsonDocument.Parse(
            File.ReadAllBytes(Path.Combine(launch.Folder, "planking.json"))
        );
        string script =
            "import ezdxf,sys,glob\n"
            + "for f in sorted(glob.glob(sys.argv[1])):\n"
            + " d=ezdxf.readfile(f); a=d.audit()\n"
            + " assert not a.errors and not a.fixes, f\n"
            + " for e in d.modelspace():\n"
            + "  if e.dxf.layer=='CUT' and e.dxftype() in ('LWPOLYLINE','POLYLINE'):\n"
            + "   p=[(q[0],q[1]) for q in e.get_points()] if e.dxftype()=='LWPOLYLINE' else [(v.dxf.location[0],v.dxf.location[1]) for v in e.vertices]\n"
            + "   print(f.split('/')[-1][:-4],*['%.6f %.6f'%q for q in p])\n";
        string text = OutsideTool.Run(
            "/usr/bin/python3",
            "python3-ezdxf",
            "-c",
            script,
            Path.Combine(launch.Folder, dxf, "[SP][12]-*.dxf")
        );
        var read = text.Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(l => l.Split(' '))
            .ToDictionary(l => l[0], l => Points([.. l.Skip(1)]));
        int compared = 0;
        // Every plank, and every piece of a plank longer than its stock.
        foreach (
            (string id, JsonElement cut) in planking
                .RootElement.GetProperty("planks")
                .EnumerateArray()
                .SelectMany(p =>
                    p.GetProperty("pieces")
                        .EnumerateArray()
                        .Select(q => (q.GetProperty("id").GetString()!, q.GetProperty("cut")))
                        .Prepend(
                            (
                                p.GetProperty("id").GetString()!,
                                p.GetProperty("flat").GetProperty("cut")
                            )
                        )
                )
        )
        {
            Vec2[] should =
            [
                .. cut.EnumerateArray().Select(p => new Vec2(p[0].GetDouble(), p[1].GetDouble())),
            ];
            Vec2[] drawn = read[id];
            Assert.All(
                should,
                p => Assert.True(DistanceTo(drawn, p) < 0.008, $"{id}: {DistanceTo(drawn, p)} mm")
            );
            Assert.All(drawn, p => Assert.True(DistanceTo(should, p) < 0.001));
            compared++;
        }

        Assert.Equal(read.Count, compared);
        Assert.True(compared > 150);
    }

    /// <summary>One more reader: GDAL finds the same number of outlines in a layer's file.</summary>
    [Fact]
    public void GdalReadsALayersFile()
    {
        string text = OutsideTool.Run(
            "ogrinfo",
            "gdal-bin",
            "-ro",
            "-al",
            "-q",
            "-where",
            "Layer='CUT'",
            Path.Combine(launch.Folder, "dxf", "layer-1-starboard.dxf")
        );
        Assert.Equal(launch.Planks("S1"), text.Split("OGRFeature").Length - 1);
    }

    /// <summary>Each pattern page is as large as its plank and more, and the outline drawn on it measures back to the plank's own lengths.</summary>
    [Fact]
    public void PatternsAreInTrueSize()
    {
        using var pdf = PdfDocument.Open(
            Path.Combine(launch.Folder, "full-size", "layer-1-starboard.pdf")
        );
        using var planking = JsonDocument.Parse(
            File.ReadAllBytes(Path.Combine(launch.Folder, "planking.json"))
        );
        JsonElement[] planks =
        [
            .. planking
                .RootElement.GetProperty("planks")
                .EnumerateArray()
                .Where(p =>
                    p.GetProperty("id").GetString()!.StartsWith("S1", StringComparison.Ordinal)
                ),
        ];
        Assert.Equal(planks.Length, pdf.NumberOfPages);
        const double mm = 72 / 25.4;
        foreach (int page in new[] { 1, 7, 20, planks.Length })
        {
            double length = planks[page - 1].GetProperty("cutLengthMm").GetDouble();
            UglyToad.PdfPig.Content.Page read = pdf.GetPage(page);
            Assert.True(read.Width / mm > length);
            IEnumerable<PdfRectangle> boxes = read
                .Paths.Select(p => p.GetBoundingRectangle())
                .OfType<PdfRectangle>();
            Assert.Contains(boxes, b => Math.Abs((b.Width / mm) - length) < 0.03);
            Assert.Contains(
                boxes,
                b => Math.Abs((b.Width / mm) - 100) < 0.01 && Math.Abs((b.Height / mm) - 100) < 0.01
            );
            Assert.Contains(
                planks[page - 1].GetProperty("id").GetString()!,
                string.Concat(read.GetWords().Select(w => w.Text)),
                StringComparison.Ordinal
            );
        }
    }

    [Fact]
    public void TheSameInputGivesTheSameBytes()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        using var again = new TempFolder();
        Assert.Equal(
            ExitCode.Done,
            Lay(launch.Job, again.Path, TestContext.Current.CancellationToken).Exit
        );
        string[] files =
        [
            .. Directory
                .EnumerateFiles(launch.Folder, "*", SearchOption.AllDirectories)
                .Select(f => Path.GetRelativePath(launch.Folder, f))
                .Order(),
        ];
        Assert.Equal(
            files,
            Directory
                .EnumerateFiles(again.Path, "*", SearchOption.AllDirectories)
                .Select(f => Path.GetRelativePath(again.Path, f))
                .Order()
        );
        Assert.All(
            files,
            f =>
                Assert.True(
                    File.ReadAllBytes(Path.Combine(launch.Folder, f))
                        .AsSpan()
                        .SequenceEqual(File.ReadAllBytes(Path.Combine(again.Path, f))),
                    f
                )
        );
    }

    [Fact]
    public void AStoppedRunLeavesTheEarlierOutputWhole()
    {
        using var folder = new TempFolder();
        File.WriteAllText(folder.File("planking.json"), "earlier");
        using var stop = new CancellationTokenSource();
        var progress = new Stopper(stop, "writing");
        Assert.ThrowsAny<OperationCanceledException>(() =>
            LayRun.Run(new(LaidLaunch.JobFile, folder.Path, false), progress, new(), stop.Token)
        );
        Assert.Equal("earlier", File.ReadAllText(folder.File("planking.json")));
        Assert.Single(Directory.EnumerateFiles(folder.Path, "*", SearchOption.AllDirectories));
    }

    [Fact]
    public void AnOutputFolderThatCannotBeWrittenIsNamed()
    {
        using var folder = new TempFolder();
        File.WriteAllText(folder.File("there"), "");
        OutputException e = Assert.Throws<OutputException>(() =>
            Lay(LaidLaunch.JobFile, folder.File("there"), TestContext.Current.CancellationToken)
        );
        Assert.Contains("there", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void FaultsOfTheJobLeaveNoFiles()
    {
        using var folder = new TempFolder();
        string job = folder.File("job.toml");
        File.WriteAllText(
            job,
            File.ReadAllText(LaidLaunch.JobFile)
                .Replace("angle = 45", "angel = 45", StringComparison.Ordinal)
        );
        File.Copy(
            Path.Combine(Path.GetDirectoryName(LaidLaunch.JobFile)!, "offsets.csv"),
            folder.File("offsets.csv")
        );
        RunReport report = Lay(job, folder.File("out"), TestContext.Current.CancellationToken);
        Assert.Equal(ExitCode.JobHasFaults, report.Exit);
        Assert.Contains(
            report.Findings,
            f =>
                f.Where.StartsWith("job.toml, line", StringComparison.Ordinal)
                && f.Message.Contains("angle", StringComparison.Ordinal)
        );
        Assert.False(Directory.Exists(folder.File("out")));
    }

    [Fact]
    public void TiledPatternsComeOnTheJobsPaper()
    {
        using var folder = new TempFolder();
        string job = OneLayerTender.In(
            folder,
            "patterns = \"tiled\"\npaper = \"A3\"\ndxf-units = \"in\""
        );
        Assert.Equal(
            ExitCode.Done,
            Lay(job, folder.File("out"), TestContext.Current.CancellationToken).Exit
        );
        using var pdf = PdfDocument.Open(folder.File("out/full-size/layer-1-starboard.pdf"));
        Assert.True(pdf.NumberOfPages > 40);
        const double mm = 72 / 25.4;
        double[] sides = [pdf.GetPage(3).Width / mm, pdf.GetPage(3).Height / mm];
        Assert.Equal(297, sides.Min(), 0.02);
        Assert.Equal(420, sides.Max(), 0.02);
        Assert.Contains(
            "$INSUNITS\r\n 70\r\n1\r\n".Replace(" 70", "70"),
            File.ReadAllText(folder.File("out/dxf/S1-05.dxf")).Replace(" 70\r\n     1", "70\r\n1"),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void ExplainTellsTheStoryDownToTheLineOfTheDxf()
    {
        RunReport report = ExplainRun.Run(
            new(LaidLaunch.JobFile, null, false),
            "s1-07",
            new Progress<PlanProgress>(),
            new(),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(ExitCode.Done, report.Exit);
        string line = report
            .Result!.Split('\n')
            .Single(l => l.Contains("Its first corner stands on lines", StringComparison.Ordinal));
        int at = int.Parse(line.Split("lines ")[1].Split(' ')[0], CultureInfo.InvariantCulture);
        double x = double.Parse(line.Split("x = ")[1].Split(',')[0], CultureInfo.InvariantCulture);
        string[] dxf = File.ReadAllLines(Path.Combine(launch.Folder, "dxf", "S1-07.dxf"));
        Assert.Equal("10", dxf[at - 1].Trim());
        Assert.Equal(x, double.Parse(dxf[at], CultureInfo.InvariantCulture));
        Assert.Contains(
            "station 3 at 1050 mm: keel edge 244 mm up",
            report.Result,
            StringComparison.Ordinal
        );
        Assert.Equal(
            ExitCode.JobHasFaults,
            ExplainRun
                .Run(
                    new(LaidLaunch.JobFile, null, false),
                    "S9-99",
                    new Progress<PlanProgress>(),
                    new(),
                    TestContext.Current.CancellationToken
                )
                .Exit
        );
    }

    private static RunReport Lay(string job, string folder, CancellationToken stop) =>
        LayRun.Run(new(job, folder, false), new Progress<PlanProgress>(), new(), stop);

    private static Vec2[] Points(string[] numbers) =>
        [
            .. numbers
                .Chunk(2)
                .Select(n => new Vec2(
                    double.Parse(n[0], CultureInfo.InvariantCulture),
                    double.Parse(n[1], CultureInfo.InvariantCulture)
                )),
        ];

    private static double DistanceTo(Vec2[] ring, Vec2 p)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i < ring.Length; i++)
        {
            Vec2 a = ring[i],
                side = ring[(i + 1) % ring.Length] - a;
            double along = side.Norm > 0 ? Math.Clamp((p - a).Dot(side) / side.Dot(side), 0, 1) : 0;
            least = Math.Min(least, p.ChordTo(a + (along * side)));
        }

        return least;
    }

    private sealed class Stopper(CancellationTokenSource stop, string at) : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value)
        {
            if (value.Part > 0.3 && value.Doing.StartsWith(at, StringComparison.Ordinal))
            {
                stop.Cancel();
            }
        }
    }
}
