using PlankFit.App.Running;
using PlankFit.App.Taping;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>`plankfit trust` from the job to the list at the hull, and back by what was typed into its blanks.</summary>
public sealed class TrustRunTests
{
    private static string Launch(TempFolder folder, string asked)
    {
        string from = DemoTables.Folder("survey-launch");
        foreach (string file in Directory.EnumerateFiles(from))
        {
            File.Copy(file, Path.Combine(folder.Path, Path.GetFileName(file)));
        }

        string job = Path.Combine(folder.Path, "job.toml");
        File.AppendAllText(job, asked);
        return job;
    }

    private static RunReport Run(string job, TempFolder folder) =>
        TrustRun.Run(
            new(job, Path.Combine(folder.Path, "out"), false),
            new Progress<PlanProgress>(),
            new Timings(),
            TestContext.Current.CancellationToken
        );

    [Fact]
    public void WithoutTrustItIsSaidWhatToAdd()
    {
        using var folder = new TempFolder();
        RunReport report = Run(Launch(folder, ""), folder);
        Assert.Equal(ExitCode.JobHasFaults, report.Exit);
        Assert.Contains(
            "[trust]",
            Assert.Single(report.Findings).Message,
            StringComparison.Ordinal
        );
    }

    /// <summary>The blanks come back as measured.csv: rows typed into are read twice, rows left empty are not read.</summary>
    [Fact]
    public void BlanksAreTypedIntoAndReadAgain()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        using var folder = new TempFolder();
        string job = Launch(folder, "\n[trust]\n");
        RunReport report = Run(job, folder);
        Assert.Equal(ExitCode.Done, report.Exit);
        string told = string.Join("\n", report.Lines);
        Assert.Contains("The table alone", told, StringComparison.Ordinal);
        Assert.Contains("if [trust] is right", told, StringComparison.Ordinal);
        Assert.Contains("Not yet: ", told, StringComparison.Ordinal);
        foreach (string never in new[] { "will fit", "exact", "guaranteed" })
        {
            Assert.DoesNotContain(never, told, StringComparison.OrdinalIgnoreCase);
        }

        string[] blanks = File.ReadAllLines(Path.Combine(folder.Path, "out", "to-tape.csv"));
        Assert.True(blanks.Length > 8);
        int girth = Array.FindIndex(blanks, b => b.StartsWith("girth,", StringComparison.Ordinal));
        string line = report.Lines.First(l => l.Contains("girth at ", StringComparison.Ordinal));
        string should = line.Split("should read ")[1].Split(" mm")[0];
        blanks[girth] += should;
        blanks[girth + 1] += should;
        File.WriteAllLines(Path.Combine(folder.Path, "measured.csv"), blanks);
        File.AppendAllText(job, "\n[as-built]\nmeasured = \"measured.csv\"\n");
        ReadResult read = JobReader.Read(job);
        Assert.Empty(read.Findings.Where(f => f.Severity == Severity.Error));
        Assert.Equal(2, read.Job!.AsBuilt.Readings.Length);
        report = Run(job, folder);
        told = string.Join("\n", report.Lines);
        Assert.Contains("With 2 readings of the tape", told, StringComparison.Ordinal);
        // What was taped is not asked for again.
        Assert.DoesNotContain(
            report.Lines,
            l => l.Contains(line.Split(": ")[0].Split(". ")[1], StringComparison.Ordinal)
        );
    }
}
