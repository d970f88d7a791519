using System.Collections.Immutable;
using System.Text.Json;
using PlankFit.App.Laying;
using PlankFit.App.Nesting;
using PlankFit.App.Running;
using PlankFit.Export.Stock;
using PlankFit.Export.Tables;
using PlankFit.Nesting;
using PlankFit.Nesting.Effort;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Stock;
using PlankFit.Reading.Text;
using PlankFit.Tests.Nesting;
using PlankFit.Tests.Support;
using UglyToad.PdfPig.Content;

namespace PlankFit.Tests.App;

/// <summary>The verb nest from the job to its files, on the launch from the rack.</summary>
public sealed class NestRunTests : IDisposable
{
    private const string Demo = "survey-launch-from-the-rack";

    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void EverythingForTheSawIsWritten()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        // The demo itself searches for ten seconds.
        string job = JobWith("rounds = 0");
        string output = folder.File("out");
        RunReport report = NestRun.Run(
            new(job, output, Json: true),
            new Progress<PlanProgress>(),
            new Timings(),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(ExitCode.Done, report.Exit);
        Assert.Contains(
            report.Lines,
            l => l.Contains("square crosscuts", StringComparison.Ordinal)
        );
        foreach (
            string name in "bench-book.pdf nest.json tables/cut-list.csv tables/cuts.csv tables/tables.xlsx tables/shopping-list.csv tables/offcuts.csv full-size/labels.pdf".Split(
                ' '
            )
        )
        {
            Assert.True(new FileInfo(Path.Combine(output, name)).Length > 0, name);
        }

        using var nest = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(output, "nest.json")));
        using var printed = JsonDocument.Parse(report.Result!);
        JsonElement root = nest.RootElement;
        Assert.Equal("plankfit-nest/1", root.GetProperty("schema").GetString());
        Assert.Equal(root.GetRawText(), printed.RootElement.GetRawText());
        string[] inJson =
        [
            .. root.GetProperty("boards")
                .EnumerateArray()
                .SelectMany(b => b.GetProperty("pieces").EnumerateArray())
                .Select(p => p.GetProperty("id").GetString()!),
        ];
        Assert.Equal(168, inJson.Length);
        Assert.Equal(168, inJson.Distinct().Count());
        Assert.Empty(root.GetProperty("unplaced").EnumerateArray());
        Assert.InRange(root.GetProperty("gapPercent").GetDouble(), 0, 2);
        Assert.Equal(
            168 + 1,
            File.ReadAllLines(Path.Combine(output, "tables", "cut-list.csv")).Length
        );

        // Every cut of every board stands in the list, and as a line in the data.
        JsonElement[] boards = [.. root.GetProperty("boards").EnumerateArray()];
        string[] cuts = [.. File.ReadAllLines(Path.Combine(output, "tables", "cuts.csv")).Skip(1)];
        Assert.Equal(
            boards.SelectMany(b =>
                b.GetProperty("cuts")
                    .EnumerateArray()
                    .Select(c => $"{b.GetProperty("board")},{c.GetProperty("cut")}")
            ),
            cuts.Select(c => string.Join(',', c.Split(',').Take(2)))
        );
        Assert.All(
            boards,
            b =>
                Assert.Equal(
                    b.GetProperty("pieces")
                        .EnumerateArray()
                        .Select(p => p.GetProperty("id").GetString())
                        .Order(),
                    b.GetProperty("lanes")
                        .EnumerateArray()
                        .SelectMany(l => l.GetProperty("pieces").EnumerateArray())
                        .Select(p => p.GetString())
                        .Order()
                )
        );

        // Every board has its pages, its drawing and its full-size file.
        using var book = new BoundBook(output);
        IReadOnlyList<Page> sheets = book.Section("Cut sheets");
        string words = string.Join(' ', sheets.Select(p => p.Text));
        foreach (JsonElement board in root.GetProperty("boards").EnumerateArray())
        {
            string id = board.GetProperty("board").GetString()!;
            Assert.Contains(id, words, StringComparison.Ordinal);
            Assert.True(File.Exists(Path.Combine(output, "drawings", $"board-{id}.svg")));
            Assert.True(File.Exists(Path.Combine(output, "dxf", $"board-{id}.dxf")));
        }

        Assert.All(sheets, p => Assert.Contains("saw maker", p.Text, StringComparison.Ordinal));
        string dxf = Directory.GetFiles(Path.Combine(output, "dxf"))[0];
        Assert.Contains(
            "CUT",
            OutsideTool.Run("ogrinfo", "gdal-bin", "-al", dxf).ToUpperInvariant(),
            StringComparison.Ordinal
        );
    }

    /// <summary>Asked to stop while it searches, it keeps what it has.</summary>
    [Fact]
    public void StoppingKeepsTheBestPlan()
    {
        using var stopped = new CancellationTokenSource();
        var progress = new StopAtFirst(stopped);
        BottomPlan plan = DemoPlans.Of(Demo);
        NestPlan nest = NestPlanner.Of(
            plan.Job.Nest! with
            {
                Rounds = null,
            },
            plan.PiecesToSaw(),
            plan.Job.Units,
            progress,
            stopped.Token
        );
        Assert.Empty(nest.Unplaced);
        Assert.Empty(CutLaws.Broken(nest, plan.PiecesToSaw()));
    }

    /// <summary>Both verbs: whoever ends an hour's search at its first plan finds that plan's files, all of them.</summary>
    [Theory]
    [MemberData(nameof(Verbs))]
    public void StoppingTheSearchStillWritesEveryFile(string verb)
    {
        using var stopped = new CancellationTokenSource();
        string output = folder.File("out");
        Func<RunRequest, IProgress<PlanProgress>, Timings, CancellationToken, RunReport> run =
            verb == "lay" ? LayRun.Run : NestRun.Run;
        RunReport report = run(
            new(JobWith("time = 3600"), output, Json: false),
            new StopInSearch(stopped),
            new Timings(),
            stopped.Token
        );
        Assert.Equal(ExitCode.Done, report.Exit);
        Assert.StartsWith("Stopped", report.Lines[0], StringComparison.Ordinal);
        Assert.Equal(
            168 + 1,
            File.ReadAllLines(Path.Combine(output, "tables", "cut-list.csv")).Length
        );
        using var book = new BoundBook(output);
        Assert.NotEmpty(book.Section("Cut sheets"));
        Assert.Equal(verb == "lay", File.Exists(Path.Combine(output, "planking.json")));
    }

    public static TheoryData<string> Verbs => LongRuns.FirstOf("lay", "nest");

    public static TheoryData<LengthUnit> Units =>
        LongRuns.FirstOf(LengthUnit.FeetInchesEighths, LengthUnit.Millimetre);

    [Theory]
    [MemberData(nameof(Units))]
    public void EverySheetCanBeRead(LengthUnit unit)
    {
        Job job = NestedPlans.WholeLaunchWhereAsked.Job;
        BottomPlan plan = NestedPlans.WholeLaunchWhereAsked with
        {
            // Those who build in feet print on Letter.
            Job = job with
            {
                Units = unit,
                Output = job.Output with
                {
                    Paper = unit == LengthUnit.Millimetre ? PaperSize.A4 : PaperSize.Letter,
                },
            },
        };
        NestPlan nest = plan.Nest!;
        string[] faults =
        [
            .. CutSheets.Of(plan, nest).SelectMany(s => SheetCheck.Faults(s)),
            .. ShoppingPages.Of(plan, nest).SelectMany(s => SheetCheck.Faults(s)),
            .. LabelPages.Of(plan, nest).SelectMany(s => SheetCheck.Faults(s)),
        ];
        Assert.True(faults.Length == 0, string.Join("\n", faults.Take(20)));
    }

    /// <summary>What is left over can be named as stock the next time, in any unit, and is never larger than it is.</summary>
    [Theory]
    [InlineData(LengthUnit.Millimetre)]
    [InlineData(LengthUnit.Inch)]
    [InlineData(LengthUnit.FeetInchesEighths)]
    public void OffcutsAreReadBackAsStock(LengthUnit unit)
    {
        BottomPlan plan = NestedPlans.WholeLaunchWhereAsked with
        {
            Job = NestedPlans.WholeLaunchWhereAsked.Job with { Units = unit, WrittenIn = unit },
        };
        NestPlan square = plan.Nest! with
        {
            Boards = SquareCuts
                .Of(plan.Nest!.Spec, plan.PiecesToSaw(), plan.Nest.Spec.CostOf, new(default))
                .Boards,
        };
        using var stream = new MemoryStream();
        Csv.Write(NestTables.OffcutsAsStock(plan, square), stream);
        (ImmutableArray<StockBoard> boards, ImmutableArray<Finding> findings) = StockText.Read(
            TextFile.Decode(stream.ToArray(), "offcuts.csv").Text!,
            "offcuts.csv",
            unit,
            square.Spec,
            true,
            new Dictionary<string, string>()
        );
        Assert.Empty(findings);
        ImmutableArray<Offcut> kept = Offcuts.Of(square);
        Assert.True(kept.Length > 3);
        Assert.Equal(kept.Select(o => o.Id), boards.Select(b => b.Id));
        foreach ((Offcut offcut, StockBoard board) in kept.Zip(boards))
        {
            double most = unit == LengthUnit.FeetInchesEighths ? 25.4 / 8 : 0.11;
            Assert.InRange(offcut.LengthMm - board.LengthMm, -1e-6, most);
            Assert.InRange(offcut.WidthMm - board.WidthMm, -1e-6, most);
            Assert.Equal(offcut.Stock.Species, board.Species);
        }
    }

    /// <summary>The squares on the labels are read by somebody else's program.</summary>
    [Fact]
    public void LabelsCarryTheNumbersOfTheirPieces()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        Drawing page = LabelPages.Of(NestedPlans.WholeLaunch, NestedPlans.WholeLaunch.Nest!)[0];
        var all = new SortedSet<string>(StringComparer.Ordinal);
        // The reader scans a page line by line and misses some of two dozen squares at one fineness or another; a phone sees one at a time.
        foreach (int dpi in new[] { 200, 150, 250, 300, 400 })
        {
            if (all.Count == 21)
            {
                break;
            }

            string png = folder.File($"labels-{dpi}.png");
            using (FileStream stream = File.Create(png))
            {
                PlankFit.Draughting.Skia.PngWriter.Write(stream, page, dpi);
            }

            all.UnionWith(
                OutsideTool
                    .Run("zbarimg", "zbar-tools", "--raw", "-q", "--nodbus", png)
                    .Split(
                        '\n',
                        StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries
                    )
            );
        }

        string[] read = [.. all];
        string[] wanted =
        [
            .. NestedPlans
                .WholeLaunch.Nest!.Boards.SelectMany(b => b.Lanes.SelectMany(l => l.PieceIds))
                .Take(21)
                .Select(id => id.ToString())
                .Order(StringComparer.Ordinal),
        ];
        Assert.Equal(wanted, read);
    }

    /// <summary>The demo's job in a folder of its own, with a setting for the search in place of the demo's.</summary>
    private string JobWith(string search)
    {
        string from = DemoTables.Folder(Demo);
        foreach (string file in new[] { "stock.csv", "yard.csv" })
        {
            File.Copy(Path.Combine(from, file), folder.File(file));
        }

        string text = File.ReadAllText(Path.Combine(from, "job.toml"));
        Assert.DoesNotContain("\ntime", text, StringComparison.Ordinal);
        File.WriteAllText(
            folder.File("job.toml"),
            text.Replace(
                    "../survey-launch/",
                    DemoTables.Folder("survey-launch").Replace('\\', '/') + "/",
                    StringComparison.Ordinal
                )
                .Replace("[nest]", "[nest]\n" + search, StringComparison.Ordinal)
        );
        return folder.File("job.toml");
    }

    /// <summary>Stops when the first plan of cutting is shown.</summary>
    private sealed class StopInSearch(CancellationTokenSource stop) : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value)
        {
            if (value.Doing.Contains("boards", StringComparison.Ordinal))
            {
                stop.Cancel();
            }
        }
    }

    private sealed class StopAtFirst(CancellationTokenSource stop) : IProgress<NestProgress>
    {
        public void Report(NestProgress value) => stop.Cancel();
    }
}
