using System.Collections.Immutable;
using PlankFit.App.Marking;
using PlankFit.App.Nesting;
using PlankFit.App.Running;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Stock;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>Boards that planks were sawn out of leave the rack when the planks are marked, once, and their offcuts come in; the user's own file stays as it is.</summary>
public sealed class SawnBoardsTests : IDisposable
{
    private const string Job = """
        [job]
        name = "One skin"
        units = "mm"
        [hull]
        offsets = "offsets.csv"
        offsets-are-to = "outside"
        keel = "keel edge"
        chine = "chine"
        [[layer]]
        name = "skin"
        thickness = 9
        width = 150
        heads = "aft"
        angle = 45
        [nest]
        stock = "stock.csv"
        rounds = 0
        """;

    private const string Stock =
        "board,count,length,width,thickness\nB-01,1,4000,170,10\nB-02,60,4000,170,10\n";

    private readonly TempFolder folder = new();

    public SawnBoardsTests()
    {
        File.WriteAllText(folder.File("job.toml"), Job);
        File.WriteAllText(folder.File("stock.csv"), Stock);
        File.Copy(
            Path.Combine(DemoTables.Folder("survey-launch"), "offsets.csv"),
            folder.File("offsets.csv")
        );
    }

    public void Dispose() => folder.Dispose();

    private RunRequest Request => new(folder.File("job.toml"), folder.File("out"), false);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private NestSpec Rack => JobReader.Read(folder.File("job.toml")).Job!.Nest!;

    private RunReport Sawn(params IEnumerable<PlankId> planks) =>
        SawnRun.Run(
            Request,
            [.. planks.Select(p => p.ToString())],
            new Progress<PlanProgress>(),
            new(),
            Stop
        );

    [Fact]
    public void BoardsLeaveTheRackOnceAndTheirOffcutsComeIn()
    {
        // Where more is asked for, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        NestRun.Run(Request, new Progress<PlanProgress>(), new(), Stop);
        ImmutableArray<BoardSawnInto> planned = PlannedBoards
            .In(folder.File("out"), "One skin")!
            .Value;
        BoardSawnInto board = planned.First(b =>
            b.Board.StartsWith("B-02", StringComparison.Ordinal)
            && b.Planks.Length > 1
            && b.Offcuts.Length > 0
        );

        RunReport report = Sawn(board.Planks[0]);
        Assert.Equal(ExitCode.Done, report.Exit);
        string said = report.Lines.Single(l =>
            l.StartsWith("Off the rack", StringComparison.Ordinal)
        );
        Assert.Contains($": {board.Board};", said, StringComparison.Ordinal);
        Assert.Contains(board.Planks[1].ToString(), said, StringComparison.Ordinal);

        NestSpec rack = Rack;
        Assert.Equal(59, rack.Boards.Single(b => b.Id == "B-02").Count);
        foreach (OffcutLeft offcut in board.Offcuts)
        {
            StockBoard left = rack.Boards.Single(b => b.Id == offcut.Id);
            Assert.Equal(
                (offcut.LengthMm, offcut.WidthMm, 10, true),
                (left.LengthMm, left.WidthMm, left.ThicknessMm, left.OnHand)
            );
        }

        Finding told = Assert.Single(
            JobReader.Read(folder.File("job.toml")).Findings,
            f => f.Where == "the rack"
        );
        Assert.Contains(board.Board, told.Message, StringComparison.Ordinal);

        // The rest of the same board: it is off the rack already.
        report = Sawn(board.Planks.Skip(1));
        Assert.Contains("No further board leaves the rack by the plan of cutting.", report.Lines);
        Assert.Equal(59, Rack.Boards.Single(b => b.Id == "B-02").Count);

        // Another, and the one that there is one of.
        BoardSawnInto single = planned.Single(b => b.Board == "B-01");
        Sawn(single.Planks);
        Assert.DoesNotContain(Rack.Boards, b => b.Id == "B-01");
        Assert.Equal(Stock, File.ReadAllText(folder.File("stock.csv")));

        // What is spoiled took its board with it.
        SawnRun.Forget(Request, [single.Planks[0].ToString()], new Progress<PlanProgress>(), Stop);
        Assert.DoesNotContain(Rack.Boards, b => b.Id == "B-01");
    }

    /// <summary>What is still to be bought was never on the rack: it is told apart, and its offcuts come in all the same.</summary>
    [Fact]
    public void BoardsThatAreBoughtAreNotSaidToLeaveTheRack()
    {
        // Where long runs are asked for or faults are planted, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        File.WriteAllText(
            folder.File("job.toml"),
            Job.Replace(
                "stock = \"stock.csv\"",
                "stock = \"stock.csv\"\nbuy = \"yard.csv\"",
                StringComparison.Ordinal
            )
        );
        File.WriteAllText(
            folder.File("stock.csv"),
            "board,count,length,width,thickness\nB-01,1,4000,170,10\n"
        );
        File.WriteAllText(folder.File("yard.csv"), "board,length,width,thickness\nY,4000,170,10\n");
        NestRun.Run(Request, new Progress<PlanProgress>(), new(), Stop);
        BoardSawnInto[] planned = [.. PlannedBoards.In(folder.File("out"), "One skin")!.Value];
        BoardSawnInto bought = planned.First(b => b.ToBuy && b.Offcuts.Length > 0),
            had = planned.Single(b => !b.ToBuy);
        Assert.StartsWith("Y", bought.Board, StringComparison.Ordinal);

        int offcuts = bought.Offcuts.Length + had.Offcuts.Length;
        string said = Sawn([.. bought.Planks, .. had.Planks])
            .Lines.Single(l =>
                l.Contains(
                    offcuts == 1
                        ? "; 1 offcut of them comes in"
                        : $"; {offcuts} offcuts of them come in",
                    StringComparison.Ordinal
                )
            );
        Assert.StartsWith(
            $"Off the rack by the plan of cutting: {had.Board}; bought for it, and so not on the rack: {bought.Board}; ",
            said,
            StringComparison.Ordinal
        );
        Assert.Contains(Rack.Boards, b => b.Id == bought.Offcuts[0].Id);

        // The next plan names boards anew, and says so.
        Assert.Contains(
            NestRun.Run(Request, new Progress<PlanProgress>(), new(), Stop).Findings,
            f =>
                f.Message.Contains(
                    "put away cut sheets of an earlier one",
                    StringComparison.Ordinal
                )
        );
    }

    [Fact]
    public void WithoutAPlanOfCuttingTheRackStaysAndThatIsTold()
    {
        RunReport report = Sawn(Named.Plank("S1-12"));
        Assert.Contains(
            report.Lines,
            l => l.Contains("has no plan of cutting", StringComparison.Ordinal)
        );
        Assert.Equal(60, Rack.Boards.Single(b => b.Id == "B-02").Count);
    }
}
