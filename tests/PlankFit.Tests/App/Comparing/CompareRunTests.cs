using System.Text.Json;
using PlankFit.App.Comparing;
using PlankFit.App.Running;
using PlankFit.Export.Comparing;
using PlankFit.Planking.Laying;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App.Comparing;

/// <summary>`plankfit compare` from the job to its files.</summary>
public sealed class CompareRunTests : IDisposable
{
    private readonly TempFolder folder = new();

    private static readonly CompareAsked Asked = new() { Angle = "40,45", Width = "100,120" };

    private RunReport Run(
        string job,
        string to,
        CompareAsked asked,
        CancellationToken? stop = null
    ) =>
        CompareRun.Run(
            new(job, folder.File(to), true),
            asked,
            new Progress<PlanProgress>(),
            new Timings(),
            stop ?? TestContext.Current.CancellationToken
        );

    /// <summary>Lay-outs are laid side by side on all cores in an order of their own, and the files are the same to the last byte.</summary>
    [Fact]
    public void TwoRunsWriteTheSameBytes()
    {
        string job = OneLayerTender.In(folder, "# nothing asked for");
        RunReport first = Run(job, "a", Asked),
            second = Run(job, "b", Asked);
        Assert.Equal(ExitCode.Done, first.Exit);
        Assert.Equal(first.Result, second.Result);
        string[] files =
        [
            "sheets/compare.pdf",
            "tables/compare.csv",
            "drawings/compare.svg",
            "compare.json",
        ];
        Assert.All(
            files,
            f =>
                Assert.Equal(
                    File.ReadAllBytes(Path.Combine(folder.File("a"), f)),
                    File.ReadAllBytes(Path.Combine(folder.File("b"), f))
                )
        );
        using var json = JsonDocument.Parse(first.Result!);
        JsonElement[] layouts = [.. json.RootElement.GetProperty("layouts").EnumerateArray()];
        // The job's own width of 100 at 45 degrees is the job as it stands, and is laid once.
        Assert.Equal(4, layouts.Length);
        Assert.Contains(
            $"Nothing beats {layouts.Count(l => l.GetProperty("unbeaten").GetBoolean())} of them",
            first.Lines[0],
            StringComparison.Ordinal
        );
        string[] rows = File.ReadAllLines(Path.Combine(folder.File("a"), files[1]));
        Assert.Equal(5, rows.Length);
        Assert.Contains("as it stands", rows[1], StringComparison.Ordinal);
    }

    [Fact]
    public void AJobThatCannotBeReadIsToldAndNothingIsWritten()
    {
        string job = folder.File("job.toml");
        File.WriteAllText(job, "[job]\nname = 3\n");
        RunReport report = Run(job, "out", Asked);
        Assert.Equal(ExitCode.JobHasFaults, report.Exit);
        Assert.NotEmpty(report.Findings);
        Assert.False(Directory.Exists(folder.File("out")));
    }

    [Fact]
    public void StoppedBeforeAnythingIsLaidNothingIsWritten()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() =>
            Run(ComparedJobs.Prism(folder), "out", Asked, stop.Token)
        );
        Assert.False(Directory.Exists(folder.File("out")));
    }

    /// <summary>A table that is not fair is told before anything else, and on every sheet.</summary>
    [Fact]
    public void WhatIsAmissWithTheTableIsTold()
    {
        string job = ComparedJobs.Launch(folder),
            table = folder.File("offsets.csv");
        File.WriteAllText(
            table,
            File.ReadAllText(table).Replace("632,767,897", "632,760,897", StringComparison.Ordinal)
        );
        RunReport report = Run(job, "out", new() { Width = "140" });
        string told = Assert.Single(report.First);
        Comparison found = ComparedJobs.Laid(job, new() { Width = "140" });
        Assert.All(
            CompareSheets.Of(found),
            s =>
                Assert.Contains(
                    s.Shapes.OfType<PlankFit.Draughting.Lettering>(),
                    l => l.Text == told
                )
        );
    }

    /// <summary>Two jobs as they stand, without a range.</summary>
    [Fact]
    public void JobsAreHeldAgainstEachOther()
    {
        using var other = new TempFolder();
        string second = ComparedJobs.Prism(other, layer: "master = 2900");
        RunReport report = Run(
            ComparedJobs.Prism(folder),
            "out",
            new() { Others = [second], By = "planks,waste" }
        );
        Assert.StartsWith("2 lay-outs. Nothing beats ", report.Lines[0], StringComparison.Ordinal);
        Assert.Contains(
            "planks to saw and waste taken together",
            report.Lines[0],
            StringComparison.Ordinal
        );
        using var json = JsonDocument.Parse(report.Result!);
        Assert.Equal(
            ["as it stands", second],
            json.RootElement.GetProperty("layouts")
                .EnumerateArray()
                .Select(l => l.GetProperty("name").GetString()!)
        );
    }

    /// <summary>Chart, pictures and list of jobs in millimetres and in inches, with lay-outs at one place of the chart.</summary>
    [Fact]
    public void SheetsCanBeRead()
    {
        using var other = new TempFolder();
        foreach (
            Comparison c in new[]
            {
                ComparedJobs.Laid(
                    ComparedJobs.Prism(folder),
                    new()
                    {
                        Angle = "40..50:5",
                        Width = "110..150:10",
                        Chart = "tapers,bend",
                    }
                ),
                ComparedJobs.Laid(
                    ComparedJobs.Prism(other, "in", 25.4m),
                    new()
                    {
                        Angle = "40..50:5",
                        Width = "5,6",
                        Chart = "planks,waste",
                    }
                ),
            }
        )
        {
            Drawing[] sheets = [.. CompareSheets.Of(c)];
            string faults = string.Join(
                "\n",
                sheets
                    .SelectMany(s => SheetCheck.Faults(s).Concat(SheetCheck.Ringed(s)))
                    .Concat(SheetCheck.Struck(sheets[0], _ => true))
            );
            Assert.True(faults.Length == 0, faults);
            Assert.Equal(
                c.Laid.Select(l => CompareChart.LayerOf(l.Number)).Order(),
                CompareChart
                    .Of(c)
                    .Shapes.Select(s => s.Layer)
                    .Where(l => l.StartsWith("layout-", StringComparison.Ordinal))
                    .Order()
            );
        }
    }

    public void Dispose() => folder.Dispose();
}
