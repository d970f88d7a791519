using PlankFit.App.Explaining;
using PlankFit.App.Marking;
using PlankFit.App.Running;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Laying;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>What the cards call a piece, S2-24a, is understood by every verb that takes a plank.</summary>
public sealed class PieceNamesTests
{
    private static readonly JointedPlank Pieced = DemoPlans
        .Of("survey-launch")
        .Joints.Of(2, Side.Starboard)!
        .Planks[0];

    private static RunReport Explained(string name)
    {
        using var temp = new TempFolder();
        return ExplainRun.Run(
            new(
                Path.Combine(DemoTables.Folder("survey-launch"), "job.toml"),
                temp.File("out"),
                false
            ),
            name,
            new Progress<PlanProgress>(),
            new Timings(),
            TestContext.Current.CancellationToken
        );
    }

    [Theory]
    [InlineData("S3-10a", "S3-10a")]
    [InlineData("s3-10A", "S3-10a")]
    [InlineData("PT2-112c", "PT2-112c")]
    [InlineData("S3-10", "S3-10")]
    [InlineData("S1-A1b", "S1-A1b")]
    [InlineData("S3-10ab", null)]
    [InlineData("a", null)]
    [InlineData("S1-A", null)]
    public void NamesOfPiecesAreRead(string text, string? name) =>
        Assert.Equal(name, PieceId.Parse(text)?.ToString());

    [Fact]
    public void ExplainTellsAPieceByItsPlankAndHowItIsJoined()
    {
        PieceId piece = Pieced.Pieces[1].Id;
        RunReport report = Explained(piece.ToString().ToLowerInvariant());
        Assert.Equal(ExitCode.Done, report.Exit);
        Assert.StartsWith($"{piece}, a piece of {Pieced.PlankId}: starboard", report.Result);
        Assert.Contains("Its pieces, lettered from inboard", report.Result);
        Assert.Contains($"{Pieced.Pieces.Length} pieces: a ", report.Result);
        Assert.Contains("Butt a/b on ", report.Result);
    }

    [Fact]
    public void APieceThatIsNotThereIsToldWithThoseThatAre()
    {
        Finding none = Assert.Single(Explained($"{Pieced.PlankId}k").Findings);
        Assert.Contains(
            $"has no piece 'k'; it has {Pieced.Pieces[0].Id}, {Pieced.Pieces[1].Id}",
            none.Message
        );
        Finding whole = Assert.Single(Explained("S1-10a").Findings);
        Assert.Contains("S1-10 is of one piece", whole.Message);
    }

    [Fact]
    public void SawnAsksForThePlankOfAPiece()
    {
        using var temp = new TempFolder();
        foreach (string file in new[] { "job.toml", "offsets.csv" })
        {
            File.Copy(Path.Combine(DemoTables.Folder("survey-launch"), file), temp.File(file));
        }

        RunReport report = SawnRun.Run(
            new(temp.File("job.toml"), temp.File("out"), false),
            [$"{Pieced.PlankId}a"],
            new Progress<PlanProgress>(),
            new Timings(),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(ExitCode.JobHasFaults, report.Exit);
        Assert.Contains(
            $"planks are named whole, once all their pieces are sawn: say {Pieced.PlankId}",
            Assert.Single(report.Findings).Message
        );
        Assert.False(File.Exists(temp.File("sawn-planks.json")));
    }
}
