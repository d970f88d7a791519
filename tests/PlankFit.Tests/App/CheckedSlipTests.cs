using PlankFit.App.Checking;
using PlankFit.App.Running;
using PlankFit.Export.Lines;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Reading.Offsets;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>What a builder reads of a slip in the table: the cell, what it says, what was meant, what to do; and what no check can tell.</summary>
public sealed class CheckedSlipTests
{
    private static string Checked(
        TempFolder folder,
        string hull,
        string right,
        string wrong,
        ExitCode exit = ExitCode.JobHasFaults
    )
    {
        foreach (string file in new[] { "job.toml", "offsets.csv" })
        {
            string text = File.ReadAllText(Path.Combine(DemoTables.Folder(hull), file));
            File.WriteAllText(
                folder.File(file),
                text.Replace(right, wrong, StringComparison.Ordinal)
            );
        }

        RunReport report = CheckRun.Run(
            new(folder.File("job.toml"), folder.File("out"), false),
            null,
            new Timings(),
            CancellationToken.None
        );
        Assert.Equal(exit, report.Exit);
        return File.ReadAllText(folder.File("out/check.txt"));
    }

    [Fact]
    public void FeetAndInchesExchangedAreToldWithTheirCell()
    {
        using var folder = new TempFolder();
        string told = Checked(folder, "pilot-skiff", "3-1-7,3-2-5", "1-3-7,3-2-5");
        Assert.StartsWith(
            "error    offsets.csv, line 10, column 11 (station 8): chine half-breadth reads 1-3-7, ",
            told,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "inside the run of its neighbours: 3-1-7 was probably meant (feet and inches exchanged). Look at the source, or measure; change the table only to",
            told,
            StringComparison.Ordinal
        );
        Assert.Contains("\n1 error\n", told, StringComparison.Ordinal);
    }

    [Fact]
    public void NeighboursExchangedInMillimetresAreToldEach()
    {
        using var folder = new TempFolder();
        string told = Checked(folder, "survey-launch", "767,897,999", "767,999,897");
        Assert.Contains(
            "line 10, column 9 (station 6): chine half-breadth reads 999, ",
            told,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "999 was probably meant (exchanged with station 6)",
            told,
            StringComparison.Ordinal
        );
        Assert.Contains("\n2 errors\n", told, StringComparison.Ordinal);
    }

    [Fact]
    public void AStationOutOfPlaceIsToldAtItsPosition()
    {
        using var folder = new TempFolder();
        string told = Checked(folder, "survey-launch", ",1550,2200,", ",1450,2200,");
        Assert.StartsWith(
            "error    offsets.csv, line 4, column 7 (station 4): position: ",
            told,
            StringComparison.Ordinal
        );
        Assert.Contains("further aft than it is written", told, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("pilot-skiff", "11")]
    [InlineData("tender", "9")]
    public void TheEndsAreSaidNotToBeJudgedInTextAndOnTheSheet(string hull, string last)
    {
        using var folder = new TempFolder();
        string told = Checked(folder, hull, "#", "#", ExitCode.Done);
        Assert.StartsWith("nothing found\n", told, StringComparison.Ordinal);
        string note =
            $"Not judged: the ends of the lines, stations 0, {last}. An end station cannot be judged by fairness";
        Assert.Contains(note, told, StringComparison.Ordinal);
        Assert.Contains("tape it on the hull", told, StringComparison.Ordinal);
        Job job = JobReader.Read(folder.File("job.toml")).Job!;
        FairnessReport report = PlankFit.Planking.Fairness.FairnessCheck.Judge(
            job.Offsets,
            job.Units
        );
        Lettering[] sheet =
        [
            .. CurvatureCharts.Of(job, report).SelectMany(d => d.Shapes).OfType<Lettering>(),
        ];
        // In the sheet's own lines, one below the other.
        string drawn = string.Join(' ', sheet.Select(l => l.Text));
        Assert.Contains(note, drawn, StringComparison.Ordinal);
        Assert.Contains("tape it on the hull", drawn, StringComparison.Ordinal);
        Assert.Equal(2 * report.Rows.Length, sheet.Count(l => l.Text == "tape"));
    }

    [Fact]
    public void ATableThatWritesItsMeasuresInCapitalsIsFairedToo()
    {
        string text = File.ReadAllText(
                Path.Combine(DemoTables.Folder("survey-launch"), "offsets.csv")
            )
            .Replace("chine,height", "chine,Height", StringComparison.Ordinal);
        string faired = OffsetTableWriter.Faired(
            text,
            [new("chine", PlankFit.Planking.Fairness.Measure.Height, "3", 3, 609, 608)],
            LengthUnit.Millimetre
        );
        Assert.Contains("684,608,530", faired, StringComparison.Ordinal);
    }
}
