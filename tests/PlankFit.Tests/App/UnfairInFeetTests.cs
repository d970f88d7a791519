using PlankFit.App.Checking;
using PlankFit.App.Laying;
using PlankFit.App.Running;
using PlankFit.Planking.Units;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>A table in feet, inches and eighths is judged by its eighths, whatever its sheets show: `lay` says of it what `check` says.</summary>
public sealed class UnfairInFeetTests
{
    [Fact]
    public void LayAndCheckSayTheSameOfATableInEighths()
    {
        using var folder = new TempFolder();
        foreach (string file in new[] { "job.toml", "offsets.csv" })
        {
            File.Copy(Path.Combine(DemoTables.Demo("pilot-skiff"), file), folder.File(file));
        }

        string[] lines = File.ReadAllLines(folder.File("offsets.csv"));
        int row = Array.FindIndex(lines, l => l.StartsWith("chine,half-breadth,"));
        string[] cells = lines[row].Split(',');
        cells[7] = ThreeEighthsOff(cells[7]);
        lines[row] = string.Join(',', cells);
        File.WriteAllLines(folder.File("offsets.csv"), lines);
        RunRequest To(string output) => new(folder.File("job.toml"), folder.File(output), false);
        string[] Of(RunReport report) =>
            [
                .. report
                    .Findings.Where(f =>
                        f.Where.StartsWith("offsets.csv", StringComparison.Ordinal)
                    )
                    .Select(f => f.Message),
            ];
        RunReport told = CheckRun.Run(
            To("check"),
            null,
            new Timings(),
            TestContext.Current.CancellationToken
        );
        Assert.Contains(
            told.Lines,
            l => l.Contains(LengthText.EighthsKey, StringComparison.Ordinal)
        );
        string[] checkedCells = Of(told);
        string[] laid = Of(
            LayRun.Run(
                To("lay"),
                new Progress<PlankFit.Planking.Laying.PlanProgress>(),
                new Timings(),
                TestContext.Current.CancellationToken
            )
        );
        Assert.NotEmpty(checkedCells);
        Assert.Equal(checkedCells, laid);
        Assert.All(laid, m => Assert.Matches(@"reads \d+-\d+-\d", m));
    }

    /// <summary>Three eighths more, or fewer where there is no room for more.</summary>
    private static string ThreeEighthsOff(string cell)
    {
        string[] parts = cell.Split('-');
        int eighths = parts[2][0] - '0';
        return $"{parts[0]}-{parts[1]}-{(eighths < 5 ? eighths + 3 : eighths - 3)}";
    }
}
