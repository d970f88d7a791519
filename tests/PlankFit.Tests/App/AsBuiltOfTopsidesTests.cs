using System.Text.Json;
using PlankFit.App.Laying;
using PlankFit.App.Running;
using PlankFit.Export.AsBuilt;
using PlankFit.Export.Tables;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.AsBuilt;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Planking;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>The sheet, the table and the data of a hull as it stands have the sawn planks of every panel.</summary>
public sealed class AsBuiltOfTopsidesTests
{
    private static readonly string[] OfTopside = ["ST1-08", "ST1-09", "PT2-03"];

    /// <summary>The day launch with planks sawn.</summary>
    private static BottomPlan Plan(LengthUnit unit, params string[] sawn)
    {
        BottomPlan before = DemoPlans.Of("day-launch");
        Job job = before.Job with { Units = unit };
        return WholeBottomTests.Planned(
            job with
            {
                AsBuilt = job.AsBuilt with
                {
                    Sawn =
                    [
                        .. sawn.Select(n =>
                        {
                            Plank plank = before.Find(n)!;
                            return SawnPlank.Of(plank, before.LayerOf(plank.Id).Planks, "abcdef");
                        }),
                    ],
                },
            }
        );
    }

    private static string[] Ids(BottomPlan plan) =>
        [.. plan.AsBuiltOfAll!.Sawn.Select(r => r.Id.ToString()).Order()];

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void PlanksOfEveryPanelAreListed(bool ofBottomToo)
    {
        string[] sawn = ofBottomToo ? [.. OfTopside, "S1-08"] : OfTopside;
        BottomPlan plan = Plan(LengthUnit.Millimetre, sawn);
        Assert.Equal(sawn.Order(), Ids(plan));

        // On paper: each once, under the words of its own panel.
        string[] paper =
        [
            .. AsBuiltPages
                .Of(plan, plan.AsBuiltOfAll!)
                .SelectMany(p => p.Shapes.OfType<Lettering>())
                .Select(l => l.Text),
        ];
        Assert.All(sawn, id => Assert.Equal(1, paper.Count(t => t == id)));
        string all = string.Join(" ", paper);
        Assert.Contains("its lower and upper end", all, StringComparison.Ordinal);
        Assert.Equal(
            ofBottomToo,
            all.Contains("its inboard and outboard end", StringComparison.Ordinal)
        );

        // As a table: at most four rows a plank, and the ends by the same words.
        Table table = AsBuiltTables.Of(plan.Job, plan.AsBuiltOfAll!);
        string[][] rows =
        [
            .. table.Rows.Select(r => r.Take(2).Select(c => c.Text ?? "").ToArray()),
        ];
        Assert.All(sawn, id => Assert.InRange(rows.Count(r => r[1] == id), 2, 4));
        Assert.All(
            rows.Where(r => r[0].Contains("across", StringComparison.Ordinal)),
            r => Assert.Matches(r[1] == "S1-08" ? "inboard|outboard" : "lower|upper", r[0])
        );

        // As data.
        using var stream = new MemoryStream();
        AsBuiltJson.Write(plan.Job, plan.AsBuiltOfAll!, stream);
        using var json = JsonDocument.Parse(stream.ToArray());
        JsonElement[] cut = [.. json.RootElement.GetProperty("cut").EnumerateArray()];
        Assert.Equal(sawn.Order(), cut.Select(c => c.GetProperty("plank").GetString()).Order());
    }

    [Fact]
    public void FilesAreMadeWhereOnlyATopsideIsSawn()
    {
        using var folder = new TempFolder();
        using var output = new TempFolder();
        File.WriteAllText(folder.File("offsets.csv"), WallSided.Offsets);
        File.WriteAllText(
            folder.File("job.toml"),
            WallSided.Job + "[as-built]\nsawn = \"sawn-planks.json\"\n"
        );
        BottomPlan drawn = WholeBottomTests.Planned(
            JobReader.Read(WallSided.Job, "job.toml", WallSided.Offsets, "offsets.csv").Job!
        );
        File.WriteAllText(
            folder.File("sawn-planks.json"),
            SawnPlanksFile.Write([
                SawnPlank.Of(
                    drawn.Find("ST1-10")!,
                    drawn.Others[0].PlankLayers.First().Planks,
                    "a"
                ),
            ])
        );
        RunReport report = LayRun.Run(
            new(folder.File("job.toml"), output.Path, false),
            new Progress<PlanProgress>(),
            new Timings(),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(ExitCode.Done, report.Exit);
        using var book = new BoundBook(output.Path);
        Assert.NotEmpty(book.Section("The hull as it stands"));
        Assert.Contains(
            "ST1-10",
            File.ReadAllText(output.File("tables/as-built.csv")),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "ST1-10",
            File.ReadAllText(output.File("as-built.json")),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(LengthUnit.Millimetre)]
    [InlineData(LengthUnit.FeetInchesEighths)]
    public void TheSheetsAreLegible(LengthUnit unit)
    {
        BottomPlan plan = Plan(unit, [.. OfTopside, "S1-08"]);
        Assert.Empty(
            AsBuiltPages
                .Of(plan, plan.AsBuiltOfAll!)
                .SelectMany(p => SheetCheck.Faults(p).Concat(SheetCheck.Struck(p, _ => true)))
        );
    }
}
