using System.Text.Json;
using PlankFit.App.Marking;
using PlankFit.App.Running;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>Marking planks as sawn, from the shell's side of it: the record beside the job, and what is said where it cannot be written.</summary>
public sealed class SawnRunTests : IDisposable
{
    private readonly TempFolder folder = new();

    public SawnRunTests()
    {
        foreach (string file in new[] { "job.toml", "offsets.csv" })
        {
            File.Copy(Path.Combine(DemoTables.Folder("tender"), file), folder.File(file));
        }
    }

    public void Dispose() => folder.Dispose();

    private string Record => folder.File("sawn-planks.json");

    [Fact]
    public void ARunOfPlanksIsEnteredAndStaysWhatItWas()
    {
        RunReport report = Cut("S1-12..S1-14", "P2-07");
        Assert.Equal(ExitCode.Done, report.Exit);
        Assert.Contains(report.Lines, l => l.Contains("Every command finds it there"));
        Assert.StartsWith("4 planks are written down", report.Lines[0], StringComparison.Ordinal);
        Assert.Equal(["P2-07", "S1-12", "S1-13", "S1-14"], Recorded());
        NameIt();

        // Again, with one more: what was there stays to the byte.
        string[] before = File.ReadAllLines(Record);
        report = Cut("S1-12", "S1-15");
        Assert.Equal(ExitCode.Done, report.Exit);
        Assert.Contains(report.Lines, l => l.Contains("S1-12", StringComparison.Ordinal));
        string[] after = File.ReadAllLines(Record);
        Assert.All(
            before.Where(l => l.Contains("\"id\"", StringComparison.Ordinal)),
            l => Assert.Contains(l.TrimEnd(','), after.Select(a => a.TrimEnd(',')))
        );
        Assert.Equal(["P2-07", "S1-12", "S1-13", "S1-14", "S1-15"], Recorded());
    }

    [Theory]
    [InlineData("S1-99")]
    [InlineData("S1-14..S1-12")]
    [InlineData("S1-14..P1-16")]
    [InlineData("plank")]
    public void APlankThatIsNoneIsNamedAndNothingWritten(string named)
    {
        RunReport report = Cut("S1-12", named);
        Assert.Equal(ExitCode.JobHasFaults, report.Exit);
        Assert.Equal(named, Assert.Single(report.Findings).Where);
        Assert.False(File.Exists(Record));
    }

    [Fact]
    public void ARecordThatTheJobDoesNotNameIsNotWrittenOver()
    {
        File.WriteAllText(Record, "another's");
        RunReport report = Cut("S1-12");
        Assert.Equal(ExitCode.JobHasFaults, report.Exit);
        Assert.Contains(
            report.Findings,
            f =>
                f.Severity == Severity.Error
                && f.Where.StartsWith("sawn-planks.json", StringComparison.Ordinal)
        );
        Assert.Equal("another's", File.ReadAllText(Record));
    }

    [Fact]
    public void APlankIsForgottenAlsoWhereTheBottomCannotBePlanned()
    {
        Cut("S1-12..S1-14");
        NameIt();

        // A master off the bottom: no plan.
        File.WriteAllText(
            folder.File("job.toml"),
            File.ReadAllText(folder.File("job.toml"))
                .Replace("name = \"inner\"", "name = \"inner\"\nmaster = 9000")
        );
        Assert.Equal(ExitCode.JobHasFaults, Cut("S1-15").Exit);
        RunReport report = Forget("S1-13");
        Assert.Equal(ExitCode.Done, report.Exit);
        Assert.Equal(["S1-12", "S1-14"], Recorded());
        Assert.Equal("S1-13", Assert.Single(Forget("S1-13").Findings).Where);
        Assert.Equal(["S1-12", "S1-14"], Recorded());
    }

    /// <summary>A plank that is sawn is sawn, whether or not the job names its record.</summary>
    [Fact]
    public void TheRecordIsFoundBesideTheJobAndTold()
    {
        Cut("S1-12..S1-14");
        ReadResult read = JobReader.Read(folder.File("job.toml"));
        Assert.Equal(3, read.Job!.AsBuilt.Sawn.Length);
        Finding told = Assert.Single(read.Findings);
        Assert.Equal(("sawn-planks.json", Rank.Know), (told.Where, told.Rank));
        Assert.Equal(["S1-12", "S1-13", "S1-14"], Recorded());
        Cut("S1-15");
        Assert.Equal(["S1-12", "S1-13", "S1-14", "S1-15"], Recorded());
        Assert.Equal(ExitCode.Done, Forget("S1-13").Exit);

        // One that the job does not read is told all the same.
        File.Copy(Record, folder.File("other.json"));
        File.AppendAllText(folder.File("job.toml"), "\n[as-built]\nsawn = \"other.json\"\n");
        told = Assert.Single(JobReader.Read(folder.File("job.toml")).Findings);
        Assert.Equal(("sawn-planks.json", Rank.SawAfter), (told.Where, told.Rank));
    }

    [Fact]
    public void WithoutARecordThereIsNothingToForget() =>
        Assert.Equal(ExitCode.JobHasFaults, Forget("S1-12").Exit);

    private void NameIt() =>
        File.AppendAllText(folder.File("job.toml"), "\n[as-built]\nsawn = \"sawn-planks.json\"\n");

    private RunReport Cut(params string[] planks) =>
        SawnRun.Run(
            Request,
            planks,
            new Progress<PlanProgress>(),
            new Timings(),
            TestContext.Current.CancellationToken
        );

    private RunReport Forget(params string[] planks) =>
        SawnRun.Forget(
            Request,
            planks,
            new Progress<PlanProgress>(),
            TestContext.Current.CancellationToken
        );

    private RunRequest Request => new(folder.File("job.toml"), folder.File("out"), false);

    private IEnumerable<string> Recorded()
    {
        using var record = JsonDocument.Parse(File.ReadAllBytes(Record));
        return
        [
            .. record
                .RootElement.GetProperty("planks")
                .EnumerateArray()
                .Select(p => p.GetProperty("id").GetString()!),
        ];
    }
}
