using System.Globalization;
using System.Text.Json;
using PlankFit.App.Laying;
using PlankFit.App.Running;
using PlankFit.Export.AsBuilt;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>The files of a hull as it stands, from the demo that has one.</summary>
public sealed class AsBuiltFilesTests
{
    private const string Demo = "tender-as-she-stands";

    [Fact]
    public void TheWholeJobIsLaidWithWhatWasMeasured()
    {
        using var folder = new TempFolder();
        RunReport report = LayRun.Run(
            new(Path.Combine(DemoTables.Folder(Demo), "job.toml"), folder.Path, false),
            new Progress<PlanProgress>(),
            new Timings(),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(ExitCode.Done, report.Exit);
        using var book = new BoundBook(folder.Path);
        Assert.NotEmpty(book.Section("The hull as it stands"));

        using var standing = JsonDocument.Parse(File.ReadAllBytes(folder.File("as-built.json")));
        JsonElement root = standing.RootElement;
        Assert.Equal("plankfit-as-built/1", root.GetProperty("schema").GetString());

        // Every girth of measured.csv is what the bottom is laid to.
        var measured = File.ReadLines(Path.Combine(DemoTables.Folder(Demo), "measured.csv"))
            .Where(l => l.StartsWith("girth,", StringComparison.Ordinal))
            .Select(l => l.Split(','))
            .ToList();
        Assert.Equal(8, measured.Count);
        foreach (string[] row in measured)
        {
            JsonElement at = root.GetProperty("girths")
                .EnumerateArray()
                .Single(g =>
                    g.GetProperty("station").GetString() == row[1]
                    && g.GetProperty("side").GetString() == row[2]
                );
            Assert.Equal(
                double.Parse(row[3], CultureInfo.InvariantCulture),
                at.GetProperty("laidToMm").GetDouble(),
                0.01
            );
        }

        JsonElement drift = root.GetProperty("drifts")
            .EnumerateArray()
            .Single(d => d.GetProperty("at").GetString() == "keel");
        Assert.Equal("S1-20", drift.GetProperty("since").GetString());
        Assert.True(drift.GetProperty("narrowerMm").GetDouble() > 0);
        Assert.Empty(root.GetProperty("cut").EnumerateArray());

        // The table of data has a row for each of girths, seams and changed cells, and as many cells in each.
        string[] lines = File.ReadAllLines(folder.File("tables/as-built.csv"));
        Assert.Equal(
            1
                + root.GetProperty("girths").GetArrayLength()
                + root.GetProperty("seams").GetArrayLength()
                + root.GetProperty("moves").GetArrayLength(),
            lines.Length
        );
    }

    public static TheoryData<LengthUnit> Units =>
        [LengthUnit.Millimetre, LengthUnit.FeetInchesEighths, LengthUnit.Inch];

    /// <summary>Girths, moves, drift and sawn planks on paper, in either rule: apart, inside the frame, large enough.</summary>
    [Theory]
    [MemberData(nameof(Units))]
    public void TheSheetsAreLegible(LengthUnit unit)
    {
        BottomPlan demo = DemoPlans.Of(Demo);
        Job job = demo.Job with { Units = unit };
        BottomPlan plan = WholeBottomTests.Planned(
            job with
            {
                AsBuilt = job.AsBuilt with
                {
                    Sawn =
                    [
                        .. new[] { "S1-14", "S1-16", "S2-09", "P1-15" }.Select(id =>
                            RecordsOfSawn.Of(DemoPlans.Of("tender"), id)
                        ),
                    ],
                },
            }
        );
        Assert.Equal(4, plan.AsBuilt!.Sawn.Length);
        Drawing[] pages = [.. AsBuiltPages.Of(plan, plan.AsBuilt)];
        Assert.InRange(pages.Length, 5, 9);
        Assert.Empty(
            pages.SelectMany(p => SheetCheck.Faults(p).Concat(SheetCheck.Struck(p, _ => true)))
        );
    }
}
