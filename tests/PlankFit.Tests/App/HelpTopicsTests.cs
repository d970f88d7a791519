using System.Text.RegularExpressions;
using PlankFit.App.Helping;
using PlankFit.App.Running;
using PlankFit.Planking.Findings;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>The parts of the manual: each is told, each example is read as a part of a job, and the book has them all.</summary>
public sealed partial class HelpTopicsTests : IDisposable
{
    private readonly TempFolder folder = new();

    private const string Job = """
        [job]
        name = "any"
        units = "mm"
        [hull]
        offsets = "offsets.csv"
        offsets-are-to = "outside"
        keel = "keel edge"
        chine = "chine"
        [[layer]]
        name = "inner"
        thickness = 9
        width = 130
        heads = "aft"
        angle = 45
        [[layer]]
        name = "outer"
        thickness = 9
        width = 130
        heads = "forward"
        angle = 45

        """;

    public static TheoryData<string> Topics => [.. Topic.All.Select(t => t.Name)];

    [Theory]
    [MemberData(nameof(Topics))]
    public void EachIsToldByItsName(string name)
    {
        RunReport told = HelpRun.Run(name);
        Assert.Equal(ExitCode.Done, told.Exit);
        Topic topic = Topic.Find(name)!;
        Assert.StartsWith(topic.Title + "\n", told.Result);
        Assert.DoesNotContain("**", told.Result);
        Assert.Contains(name, HelpRun.Run(null).Result);
    }

    /// <summary>The blocks that begin with a table's head, put under a plain job, are read without a fault; so are the files shown beside them.</summary>
    [Theory]
    [MemberData(nameof(Topics))]
    public void EachExampleIsRead(string name)
    {
        string[] blocks =
        [
            .. TopicBlock
                .Of(Topic.Find(name)!.Text)
                .Where(b => b.Kind == TopicBlock.Kinds.File)
                .Select(b => string.Join('\n', b.Lines) + "\n"),
        ];
        string tables = string.Concat(blocks.Where(b => b.StartsWith('[')));
        File.Copy(
            Path.Combine(DemoTables.Demo("day-launch"), "offsets.csv"),
            folder.File("offsets.csv")
        );
        string? Block(string head) =>
            blocks.FirstOrDefault(b => b.StartsWith(head, StringComparison.Ordinal));
        if (Block("line,measure") is { } offsets)
        {
            File.WriteAllText(folder.File("offsets.csv"), offsets);
        }

        if (Block("what,where") is { } measured)
        {
            File.WriteAllText(
                folder.File("measured.csv"),
                NeedsAnotherHull().Replace(measured, "")
            );
        }

        if (Block("board,") is { } boards)
        {
            File.WriteAllText(folder.File("stock.csv"), boards);
            File.WriteAllText(
                folder.File("yard.csv"),
                "board,length,width,thickness\nY-1,3000,155,9\n"
            );
        }

        // The record of sawn planks is the program's own file, and what lies behind comes from its own topic.
        string behind = tables.Contains("[[fastenings.backing]]", StringComparison.Ordinal)
            ? "[[behind]]\nname = \"engine floor\"\nkind = \"floor\"\nposition = 2400\nwidth = 60\n"
            : "";
        File.WriteAllText(
            folder.File("job.toml"),
            tables.StartsWith("[job]", StringComparison.Ordinal)
                ? tables
                : Job + SawnLine().Replace(tables, "") + behind
        );
        ReadResult read = JobReader.Read(folder.File("job.toml"));
        Assert.Equal(
            [],
            read.Findings.Where(f => f.Severity == Severity.Error)
                .Select(f => $"{f.Where}: {f.Message}")
        );
        Assert.NotNull(read.Job);
    }

    [Fact]
    public void AMistypedTopicIsMeant()
    {
        RunReport told = HelpRun.Run("jonts");
        Assert.Equal(ExitCode.WrongUsage, told.Exit);
        Assert.Contains("\"joints\"", Assert.Single(told.Lines));
    }

    [Fact]
    public void TheBookHasAllTopicsAndReplacesNothing()
    {
        string file = folder.File("manual.pdf");
        Assert.Equal(ExitCode.Done, HelpRun.Manual(file).Exit);
        byte[] bytes = File.ReadAllBytes(file);
        Assert.True(bytes.Length > 20_000);
        Assert.Equal(ExitCode.CouldNotWrite, HelpRun.Manual(file).Exit);
        Assert.Equal(bytes, File.ReadAllBytes(file));
        Assert.Equal([file], Directory.GetFiles(folder.Path));
        string words = string.Join(
            '\n',
            ManualPages
                .Of(Topic.All)
                .SelectMany(p => p.Shapes.OfType<Lettering>())
                .Select(l => l.Text)
        );
        Assert.All(Topic.All, t => Assert.Contains(t.Title, words));
    }

    [Fact]
    public void NothingInTheBookRunsOffItsPage() =>
        Assert.All(
            ManualPages.Of(Topic.All),
            page =>
                Assert.All(
                    page.Shapes.OfType<Lettering>(),
                    l =>
                    {
                        double wide = PlankFit.Draughting.Layout.Letters.Width(
                            l.Text,
                            l.HeightMm,
                            l.Bold
                        );
                        Assert.True(
                            (l.Anchor == Anchor.BaselineRight ? l.At.X : l.At.X + wide)
                                < page.WidthMm - 10,
                            l.Text
                        );
                        Assert.InRange(l.At.Y, 8, page.HeightMm - 10);
                    }
                )
        );

    public void Dispose() => folder.Dispose();

    [GeneratedRegex("(?m)^sawn = .*\n")]
    private static partial Regex SawnLine();

    /// <summary>Readings of another hull than this one.</summary>
    [GeneratedRegex("(?m)^(seam|girth|keel half-width).*\n")]
    private static partial Regex NeedsAnotherHull();
}
