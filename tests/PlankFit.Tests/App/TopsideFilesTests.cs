using System.Text.Json;
using PlankFit.App.Explaining;
using PlankFit.App.Laying;
using PlankFit.App.Marking;
using PlankFit.App.Running;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>From a job with topsides to its files: every plank of every panel on lists, cards, patterns and boards, and to be told of by its name.</summary>
public sealed class TopsideFilesTests
{
    /// <summary>A small hull of few wide planks: what is asked of the files is the same of any.</summary>
    private const string Job = """
        [job]
        name = "few planks"
        units = "mm"
        [hull]
        offsets = "offsets.csv"
        offsets-are-to = "outside"
        keel = "keel edge"
        chine = "chine"
        as-written = ["position/2"]
        [[panel]]
        name = "topside"
        lower = "chine"
        upper = "sheer"
        [[layer]]
        name = "skin"
        thickness = 9
        width = 190
        heads = "aft"
        angle = 45
        [[layer]]
        panel = "topside"
        name = "side"
        thickness = 6
        width = 250
        heads = "forward"
        angle = 55
        [timber]
        planks = "douglas-fir"

        """;

    private const string Offsets = """
        line,measure,0,1,2,3,4
        ,position,0,800,1600,3000,4400
        keel edge,height,400,210,95,35,20
        keel edge,half-breadth,25,32,40,55,55
        chine,height,700,545,470,410,390
        chine,half-breadth,100,240,360,440,450
        sheer,height,1200,1150,1100,1050,1030
        sheer,half-breadth,260,520,780,980,1010
        """;

    [Fact]
    public void EveryPlankOfEveryPanelHasItsFiles()
    {
        using var temp = new TempFolder();
        string folder = temp.File("out"),
            job = Written(temp);
        RunReport report = LayRun.Run(
            new(job, folder, false),
            new Progress<PlanProgress>(),
            new(),
            TestContext.Current.CancellationToken
        );
        Assert.True(
            report.Exit == ExitCode.Done,
            string.Join("\n", report.Findings.Select(f => f.Where + ": " + f.Message))
        );
        using var planking = JsonDocument.Parse(
            File.ReadAllBytes(Path.Combine(folder, "planking.json"))
        );
        string[] ids =
        [
            .. planking
                .RootElement.GetProperty("planks")
                .EnumerateArray()
                .Select(p => p.GetProperty("id").GetString()!),
        ];
        Assert.Equal(ids.Length, ids.Distinct().Count());
        Assert.Contains("S1-07", ids);
        Assert.Contains("ST1-07", ids);
        Assert.Contains("PT1-07", ids);
        Assert.All(
            planking.RootElement.GetProperty("planks").EnumerateArray(),
            p =>
                Assert.Equal(
                    p.GetProperty("id").GetString()!.Length > 5
                        && p.GetProperty("id").GetString()![1] == 'T',
                    p.TryGetProperty("panel", out _)
                )
        );
        string list = File.ReadAllText(Path.Combine(folder, "tables", "plank-list.csv"));
        foreach (string id in ids)
        {
            Assert.True(File.Exists(Path.Combine(folder, "dxf", id + ".dxf")), id);
            Assert.Contains($"\n{id},", list, StringComparison.Ordinal);
        }

        foreach (
            string name in new[]
            {
                "full-size/layer-T1-starboard.pdf",
                "full-size/layer-1-starboard.pdf",
                "drawings/plan-layer-T1.svg",
                "drawings/shell-expansion-layer-T1.svg",
                "dxf/layer-T1-port.dxf",
                "dxf/panel-T-laid-flat.dxf",
            }
        )
        {
            Assert.True(new FileInfo(Path.Combine(folder, name)).Length > 0, name);
        }

        using var book = new BoundBook(folder);
        Assert.NotEmpty(book.Section("The topside laid flat"));
    }

    [Fact]
    public void APlankOfATopsideIsExplainedAndMarkedAsSawn()
    {
        using var temp = new TempFolder();
        string job = Written(temp);
        RunRequest request = new(job, temp.File("out"), false);
        RunReport told = ExplainRun.Run(
            request,
            "pt1-07",
            new Progress<PlanProgress>(),
            new(),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(ExitCode.Done, told.Exit);
        Assert.Contains("PT1-07: port, layer T1", told.Result!, StringComparison.Ordinal);
        Assert.Contains("mid-topside", told.Result!, StringComparison.Ordinal);
        RunReport marked = SawnRun.Run(
            request,
            ["ST1-03..ST1-05", "S1-02"],
            new Progress<PlanProgress>(),
            new(),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(ExitCode.Done, marked.Exit);
        string record = File.ReadAllText(
            Path.Combine(Path.GetDirectoryName(job)!, "sawn-planks.json")
        );
        foreach (string id in new[] { "ST1-03", "ST1-04", "ST1-05", "S1-02" })
        {
            Assert.Contains($"\"{id}\"", record, StringComparison.Ordinal);
        }
    }

    /// <summary>What is to be sawn has the pieces of all panels, each by its own name.</summary>
    [Fact]
    public void BoardsArePlannedForThePlanksOfAllPanels()
    {
        PlankFit.Planking.Whole.Job read = JobReader
            .Read(
                Job + "[nest]\nbuy = \"yard.csv\"\n",
                "job.toml",
                Offsets,
                "offsets.csv",
                stockTexts: ["board,length,width,thickness\nY-1,4000,200,10\n"]
            )
            .Job!;
        BottomPlan plan = PlankFit.Tests.Planking.WholeBottomTests.Planned(read);
        Assert.Equal(
            plan.AllPlankLayers.SelectMany(l => l.Layer.Starboard.Concat(l.Layer.Port))
                .Select(p => p.Id)
                .Order(),
            plan.PiecesToSaw().Select(p => p.PlankId).Order()
        );
        SawPiece side = plan.PiecesToSaw().First(p => p.PlankId.Panel == "T");
        Assert.Equal(plan.LayerOf(side.PlankId).Spec.ThicknessMm, side.ThicknessMm);
    }

    private static string Written(TempFolder temp)
    {
        string folder = temp.File("job");
        Directory.CreateDirectory(folder);
        string path = Path.Combine(folder, "job.toml");
        File.WriteAllText(path, Job);
        File.WriteAllText(Path.Combine(folder, "offsets.csv"), Offsets);
        return path;
    }
}
