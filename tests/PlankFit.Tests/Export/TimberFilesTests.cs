using System.Text;
using System.Text.Json;
using PlankFit.Export.Cards;
using PlankFit.Export.Lists;
using PlankFit.Export.Tables;
using PlankFit.Export.Timber;
using PlankFit.Export.Whole;
using PlankFit.Export.Words;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Planking.Wood;
using PlankFit.Tests.Planking;
using PlankFit.Tests.Planking.Timber;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export;

/// <summary>What the files say of the wood: sheets to be read, lists, planking.json, words; and nothing where none is named.</summary>
public sealed class TimberFilesTests
{
    private static readonly TimberSpec Spruce = TimberSpec.Default with
    {
        Species = "sitka-spruce",
        Workshop = new(8, null),
        Service = new(14, "at rest in air of 15 C and 72 % humidity"),
        Grade = BoardGrade.Knotty,
    };

    public static TheoryData<string> Hulls => [.. DemoTables.All.Select(d => d.Hull)];

    private static BottomPlan Plan(string hull, double thicker = 1)
    {
        Job job = DemoPlans.Of(hull).Job;
        return WholeBottomTests.Planned(
            job with
            {
                Timber = Spruce,
                Layers =
                [
                    .. job.Layers.Select(l => l with { ThicknessMm = l.ThicknessMm * thicker }),
                ],
            }
        );
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void SheetsAreLegible(string hull)
    {
        foreach (double thicker in new[] { 1, 2.5 })
        {
            string[] faults =
            [
                .. Sheets(Plan(hull, thicker))
                    .SelectMany(d => SheetCheck.Faults(d).Concat(SheetCheck.Struck(d, _ => true))),
            ];
            Assert.True(faults.Length == 0, string.Join("\n", faults.Take(20)));
        }
    }

    /// <summary>Cards and lists with what they say of the wood, on planks that need the most words.</summary>
    [Theory]
    [MemberData(nameof(Hulls))]
    public void CardsAndListsAreLegible(string hull)
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        BottomPlan plan = Plan(hull);
        string[] faults =
        [
            .. PlankCardPages
                .Of(OnPlanks.Of(plan))
                .Concat(PlankListPages.Of(OnPlanks.Of(plan)))
                .SelectMany(d => SheetCheck.Faults(d).Concat(SheetCheck.Struck(d, _ => true))),
        ];
        Assert.True(faults.Length == 0, string.Join("\n", faults.Take(20)));
    }

    [Fact]
    public void SheetsSayWhatIsFromMemoryAndWhoMustJudge()
    {
        string text = string.Join(
            "\n",
            Sheets(Plan("pilot-skiff"))
                .SelectMany(d => d.Shapes.OfType<Lettering>())
                .Select(l => l.Text)
        );
        Assert.Contains("MEMORY", text, StringComparison.Ordinal);
        Assert.Contains("TM 5-852-4", text, StringComparison.Ordinal);
        Assert.Contains("the local code rules", text, StringComparison.Ordinal);
        Assert.Contains(" lb", text, StringComparison.Ordinal);
        Assert.DoesNotContain(" kg", text, StringComparison.Ordinal);
        Assert.DoesNotContain("MPa", text, StringComparison.Ordinal);
    }

    /// <summary>planking.json: the weights of its planks add up to its layers', and its verdicts go with its ways.</summary>
    [Fact]
    public void PlankingJsonHoldsTheTimber()
    {
        using MemoryStream stream = new();
        PlankingJson.Write(OnPlanks.Of(Plan("survey-launch")), stream);
        using var json = JsonDocument.Parse(stream.ToArray());
        double planks = 0,
            layers = 0;
        foreach (JsonElement plank in json.RootElement.GetProperty("planks").EnumerateArray())
        {
            JsonElement timber = plank.GetProperty("timber");
            planks += timber.GetProperty("weightKg").GetDouble();
            Assert.Equal("sitka-spruce", timber.GetProperty("species").GetString());
            Assert.Equal(3, timber.GetProperty("centre").GetArrayLength());
            Assert.Equal(
                plank.GetProperty("side").GetString() == "port" ? -1 : 1,
                Math.Sign(timber.GetProperty("centre")[1].GetDouble())
            );
            string verdict = plank.GetProperty("bend").GetProperty("verdict").GetString()!;
            Assert.StartsWith(
                timber.GetProperty("way").GetString() switch
                {
                    "soak or steam" => "soak",
                    "laminate thinner" or "refuse" => "refuse",
                    string cold => cold,
                    null => "?",
                },
                verdict,
                StringComparison.Ordinal
            );
        }

        foreach (JsonElement layer in json.RootElement.GetProperty("layers").EnumerateArray())
        {
            if (layer.TryGetProperty("timber", out JsonElement timber))
            {
                layers += timber.GetProperty("both").GetProperty("weightKg").GetDouble();
            }
        }

        Assert.Equal(layers, planks, 1e-2);

        // 2 sides × 2 layers of some 7.3 m², 9 mm, 0.40 × 1080 kg/m³.
        Assert.InRange(planks, 4 * 7.2 * 0.009 * 432, 4 * 7.5 * 0.009 * 432);
    }

    [Fact]
    public void ListsHaveARowAPlankAndASourceAFigure()
    {
        BottomPlan plan = Plan("survey-launch");
        Table planks = TimberTables.Planks(plan);
        Assert.Equal(
            plan.PlankLayers.Sum(l => l.Starboard.Length + l.Port.Length),
            planks.Rows.Length
        );
        Table woods = TimberTables.OfSpecies(plan);
        int source = woods.Columns.ToList().FindIndex(c => c.Name == "source"),
            name = woods.Columns.ToList().FindIndex(c => c.Name == "name in the job");
        Assert.All(woods.Rows, r => Assert.False(string.IsNullOrEmpty(r[source].Text)));
        Assert.Equal("sitka-spruce", woods.Rows[0][name].Text);
        Assert.Equal(
            SpeciesTable.BuiltIn.Select(s => s.Name).Order(),
            woods.Rows.Select(r => r[name].Text).Distinct().Order()
        );
    }

    [Fact]
    public void WithoutWoodNothingIsSaid()
    {
        BottomPlan plan = WholeBottomTests.Planned(Judges.Job(null));
        Assert.Null(plan.Timber);
        Assert.Empty(TimberSummary.Lines(plan));
        Assert.Empty(TimberTables.Planks(plan).Rows);
        using MemoryStream stream = new();
        PlankingJson.Write(OnPlanks.Of(plan), stream);
        Assert.DoesNotContain(
            "timber",
            Encoding.UTF8.GetString(stream.ToArray()),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(1.4321, LengthUnit.Millimetre, "1.4 kg")]
    [InlineData(42.06, LengthUnit.Metre, "42 kg")]
    [InlineData(1, LengthUnit.FeetInchesEighths, "2.2 lb")]
    [InlineData(100, LengthUnit.Inch, "220 lb")]
    [InlineData(0.424, LengthUnit.Millimetre, "0.42 kg")]
    [InlineData(0.0421, LengthUnit.Millimetre, "0.042 kg")]
    [InlineData(0.0421, LengthUnit.Foot, "0.093 lb")]
    [InlineData(0.0001, LengthUnit.Millimetre, "under 0.001 kg")]
    [InlineData(0, LengthUnit.Millimetre, "0 kg")]
    public void WeightsInWords(double kg, LengthUnit unit, string words) =>
        Assert.Equal(words, TimberWords.Weight(kg, unit));

    /// <summary>1 kg is 9.80665 N, 1 lb 4.448 N; two figures at most, for it is an estimate.</summary>
    [Theory]
    [InlineData(98.0665, LengthUnit.Millimetre, "10 kg")]
    [InlineData(1234, LengthUnit.Millimetre, "130 kg")]
    [InlineData(44.48, LengthUnit.Foot, "10 lb")]
    [InlineData(2, LengthUnit.Millimetre, "under 1 kg")]
    [InlineData(2, LengthUnit.Foot, "under 1 lb")]
    [InlineData(0, LengthUnit.Foot, "0 lb")]
    public void ForcesInWords(double newtons, LengthUnit unit, string words) =>
        Assert.Equal(words, TimberWords.Force(newtons, unit));

    [Theory]
    [InlineData(1.0, "100 %")]
    [InlineData(1.0000001, "101 %")]
    [InlineData(0.6201, "63 %")]
    [InlineData(0, "0 %")]
    public void APartOfTheLimitIsRoundedUp(double index, string words) =>
        Assert.Equal(words, PlankWords.StrainUsed(index));

    private static IEnumerable<Drawing> Sheets(BottomPlan plan) =>
        TimberSheets.Of(plan, plan.Timber!);
}
