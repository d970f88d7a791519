using PlankFit.App.Laying;
using PlankFit.App.Running;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Tests.Architecture;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>Who copies README's table and job into a folder has planks, with nothing against them but to tape the master.</summary>
public sealed class ReadmeHullTests
{
    [Fact]
    public void ItsTableAndJobAreLaid()
    {
        using var folder = new TempFolder();
        File.WriteAllText(folder.File("offsets.csv"), Block("line,measure"));
        File.WriteAllText(folder.File("job.toml"), Block("[job]"));
        RunReport report = LayRun.Run(
            new(folder.File("job.toml"), folder.File("out"), false),
            new Progress<PlanProgress>(),
            new Timings(),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(ExitCode.Done, report.Exit);
        Assert.DoesNotContain(report.Findings, f => f.Rank == Rank.DoNotSaw);
        Assert.Single(report.Findings, f => f.Rank != Rank.Know);
    }

    /// <summary>Of lines indented by four, as somebody copies them.</summary>
    private static string Block(string head) =>
        string.Concat(
            File.ReadAllLines(Path.Combine(HouseRules.Root(), "README.md"))
                .SkipWhile(l => !l.StartsWith("    " + head, StringComparison.Ordinal))
                .TakeWhile(l => l.StartsWith("    ", StringComparison.Ordinal))
                .Select(l => l[4..] + "\n")
        );
}
