using PlankFit.App.Laying;
using PlankFit.App.Running;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;
using UglyToad.PdfPig;

namespace PlankFit.Tests.App;

/// <summary>`lay` looks at the table as `check` does: what stands out is told first and on every sheet, and what is far out is not laid to unless the job says that it is right.</summary>
public sealed class UnfairTableTests
{
    /// <summary>The survey launch's inner skin with another value in a cell.</summary>
    private static RunReport Laid(TempFolder folder, string right, string wrong, string key = "")
    {
        foreach (string file in new[] { "job.toml", "offsets.csv" })
        {
            string text = File.ReadAllText(Path.Combine(DemoTables.Folder("survey-launch"), file));
            text =
                file == "job.toml"
                    ? OfOneSkin(text, key)
                    : text.Replace(right, wrong, StringComparison.Ordinal);
            File.WriteAllText(folder.File(file), text);
        }

        return LayRun.Run(
            new(folder.File("job.toml"), folder.File("out"), false),
            new Progress<PlanProgress>(),
            new(),
            TestContext.Current.CancellationToken
        );
    }

    private static string OfOneSkin(string job, string key) =>
        job[..job.IndexOf("[[layer]]\nkind = \"cloth\"", StringComparison.Ordinal)]
            .Replace("chine = \"chine\"", $"chine = \"chine\"\n{key}", StringComparison.Ordinal);

    [Fact]
    public void ACellTenCentimetresOffIsNotLaidTo()
    {
        using var folder = new TempFolder();
        RunReport report = Laid(folder, "632,767,897", "632,667,897");
        Assert.Equal(ExitCode.JobHasFaults, report.Exit);
        Finding fault = report.Findings[0];
        Assert.Equal("offsets.csv, line 10, column 8 (station 5)", fault.Where);
        Assert.Contains("reads 667, ", fault.Message, StringComparison.Ordinal);
        Assert.Contains("its neighbours expect about 7", fault.Message, StringComparison.Ordinal);
        Assert.EndsWith(
            "[hull] as-written = [\"chine/half-breadth/5\"]",
            fault.Message,
            StringComparison.Ordinal
        );
        Assert.False(Directory.Exists(folder.File("out")));
    }

    [Fact]
    public void WhatTheJobHasAsWrittenIsLaidToAndToldAsANote()
    {
        using var folder = new TempFolder();
        RunReport report = Laid(
            folder,
            "632,767,897",
            "632,667,897",
            "as-written = [\"chine/half-breadth/5\"]"
        );
        Assert.Equal(ExitCode.Done, report.Exit);
        Assert.Empty(report.First);
        Finding note = report.Findings.Single(f =>
            f.Message.Contains("Taken as written", StringComparison.Ordinal)
        );
        Assert.Equal(Rank.Know, note.Rank);
    }

    [Fact]
    public void ALesserSlipIsToldFirstAndInEveryMargin()
    {
        using var folder = new TempFolder();
        RunReport report = Laid(folder, "632,767,897", "632,760,897");
        const string margin = "Table not fair at station 5: see check.";
        Assert.Equal(ExitCode.Done, report.Exit);
        Assert.Equal(margin, report.First[0]);
        Assert.Equal(Rank.DoNotSaw, report.Findings[0].Rank);
        Assert.StartsWith(
            "offsets.csv, line 10",
            report.Findings[0].Where,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            margin,
            File.ReadAllText(folder.File("out/summary.txt")),
            StringComparison.Ordinal
        );
        string[] sheets = Directory.GetFiles(
            folder.File("out"),
            "*.pdf",
            SearchOption.AllDirectories
        );
        Assert.Contains(sheets, s => s.EndsWith("before-you-saw.pdf", StringComparison.Ordinal));
        foreach (string sheet in sheets)
        {
            using var pdf = PdfDocument.Open(sheet);
            Assert.All(
                pdf.GetPages(),
                p =>
                    Assert.True(
                        p.Text.Replace(" ", "", StringComparison.Ordinal)
                            .Contains(
                                margin.Replace(" ", "", StringComparison.Ordinal),
                                StringComparison.OrdinalIgnoreCase
                            ),
                        $"{sheet}, page {p.Number}: {p.Text}"
                    )
            );
        }
    }

    [Fact]
    public void ACellThatTheTableHasNotIsAFault()
    {
        using var folder = new TempFolder();
        RunReport report = Laid(folder, "#", "#", "as-written = [\"chine/half-breadth/44\"]");
        Assert.Equal(ExitCode.JobHasFaults, report.Exit);
        Assert.Contains(
            report.Findings,
            f =>
                f.Message.Contains(
                    "no value at \"chine/half-breadth/44\"",
                    StringComparison.Ordinal
                )
        );
    }

    /// <summary>Honest tables are not refused: those of the demos, and of jobs by chance in all units.</summary>
    [Fact]
    public void AnHonestTableIsNotRefused()
    {
        List<string> refused = [];
        foreach (string demo in new[] { "tender", "pilot-skiff", "survey-launch", "day-launch" })
        {
            Look(demo, Path.Combine(DemoTables.Folder(demo), "job.toml"));
        }

        for (int seed = 0; seed <= (LongRuns.Asked ? 400 : 10); seed++)
        {
            using var temp = new TempFolder();
            Look($"by chance {seed}", ChanceJob.Write(seed, temp.File("job")));
        }

        Assert.Empty(refused);

        void Look(string name, string path)
        {
            if (JobReader.Read(path).Job is { } job)
            {
                refused.AddRange(
                    FairnessCheck
                        .Judge(job.Offsets, job.Units)
                        .Findings(job.Units, job.AsWritten)
                        .Where(f => f.Rank > Rank.Know)
                        .Select(f => $"{name}: {f.Where}: {f.Message}")
                );
            }
        }
    }
}
