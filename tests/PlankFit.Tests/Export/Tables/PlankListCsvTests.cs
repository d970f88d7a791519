using System.Globalization;
using PlankFit.Export.Lists;
using PlankFit.Export.Tables;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Tables;

public sealed class PlankListCsvTests
{
    private static readonly BottomPlan Plan = PrismaticPlan.Build() with
    {
        Findings =
        [
            new(Severity.Warning, "S1-03", "taped 3 mm short,\nsay \"again\""),
            new(Severity.Note, "S1-03", "Second remark."),
            new(Severity.Note, "layer inner", "not about a plank"),
        ],
    };

    private static readonly List<Dictionary<string, string>> Rows = Read(Plan);

    [Fact]
    public void OneRowAPlankInTheOrderOfTheirNumbers()
    {
        Assert.Equal(4 * 34, Rows.Count);
        Assert.Equal(
            Plan.PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port))
                .Select(p => p.Id.ToString()),
            Rows.Select(r => r["plank"])
        );
        Assert.Equal(("S1-01", "P1-01"), (Rows[0]["plank"], Rows[34]["plank"]));
    }

    [Fact]
    public void AFullPlank()
    {
        Dictionary<string, string> row = Row("S1-17");
        Assert.Equal("starboard", row["side"]);
        Assert.Equal("1", row["layer"]);
        Assert.Equal("17", row["number"]);
        // 1504.9746 - 13.5 tan 20 √2 = 1498.0257, up to the next half; with 150 + 2.3163 + 35.3553 more, 1685.6973.
        Assert.Equal("1498.5 mm", row["net length"]);
        Assert.Equal("1686 mm", row["length to cut"]);
        Assert.Equal(1498.03, Number(row["net length mm"]));
        Assert.Equal(1685.70, Number(row["length to cut mm"]));
        Assert.Equal("150 mm", row["widest"]);
        Assert.Equal("keel", row["inboard end at"]);
        Assert.Equal("fit", row["inboard cut"]);
        Assert.Equal("45° from square, leans aft going outboard", row["inboard angle"]);
        Assert.Equal("fall 150 mm across 150 mm, forward corner the longer", row["inboard fall"]);
        Assert.Equal("bevel 20°, outer face longer by 3.5 mm", row["inboard bevel"]);
        Assert.Equal("chine", row["outboard end at"]);
        Assert.Equal("left long by 25 mm", row["outboard cut"]);
        Assert.Equal("fall 150 mm across 150 mm, after corner the longer", row["outboard fall"]);
        Assert.Equal("no bevel", row["outboard bevel"]);
        Assert.Equal("20", row["inboard bevel deg"]);
        Assert.Equal("yes", row["straight stock serves"]);
        Assert.Equal("flat", row["least radius"]);
        Assert.Equal("", row["least radius mm"]);
        Assert.Equal("no", row["fits both ends"]);
        Assert.Equal("", row["drops in"]);
        Assert.Equal("", row["notes"]);
        Assert.Equal("45", row["angle at keel deg"]);
    }

    [Fact]
    public void NotesHoldWhatWasFoundQuotedByTheRules() =>
        Assert.Equal(
            "taped 3 mm short,<U+000A>say \"again\" Second remark.",
            Row("S1-03")["notes"]
        );

    [Fact]
    public void APlankThatMeetsTwoEdgesAtOneEndTellsBoth()
    {
        Plank plank = Plan.PlankLayers.First().Starboard.First(p => p.Ends.Length == 3);
        Dictionary<string, string> row = Row(plank.Id.ToString());
        string both = row["inboard end at"] + "|" + row["outboard end at"];
        Assert.Equal(1, both.Count(c => c == '/'));
        Assert.Equal(
            plank.Ends.Select(e => Panel.BottomWordOf(e.At)).Order(),
            both.Split([" / ", "|"], StringSplitOptions.None).Order()
        );
    }

    [Theory]
    [InlineData(LengthUnit.Inch, "59\"", "66 3/8\"", "5 29/32\"")]
    [InlineData(LengthUnit.Foot, "4'-11\"", "5'-6 3/8\"", "5 29/32\"")]
    [InlineData(LengthUnit.FeetInchesEighths, "4'-11\"", "5'-6 3/8\"", "5 29/32\"")]
    [InlineData(LengthUnit.Metre, "1.4985 m", "1.686 m", "0.15 m")]
    public void InTheUnitsOfTheJob(LengthUnit unit, string net, string cut, string widest)
    {
        // 1498.0258 mm = 58 31.28/32 in, up to 59 in; 1685.6973 mm = 66 11.71/32 in, up to 66 12/32 = 5 ft 6 3/8 in.
        Dictionary<string, string> row = Read(PrismaticPlan.Build(new(Units: unit)))
            .Single(r => r["plank"] == "S1-17");
        Assert.Equal(net, row["net length"]);
        Assert.Equal(cut, row["length to cut"]);
        Assert.Equal(widest, row["widest"]);
        Assert.Equal(1498.03, Number(row["net length mm"]));
    }

    [Fact]
    public void FittedAtBothEnds()
    {
        Dictionary<string, string> row = Read(
                PrismaticPlan.Build(new(Ends: EndRules.Default with { Upper = EndRule.Fit }))
            )
            .Single(r => r["plank"] == "P2-10");
        Assert.Equal("yes", row["fits both ends"]);
        Assert.Equal("yes", row["drops in"]);
        Assert.Equal("fit, 15 mm to scribe away", row["outboard cut"]);
        Assert.StartsWith("Fits at both ends and drops in", row["notes"], StringComparison.Ordinal);
    }

    private static Dictionary<string, string> Row(string id) => Rows.Single(r => r["plank"] == id);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static List<Dictionary<string, string>> Read(BottomPlan plan)
    {
        using MemoryStream stream = new();
        Csv.Write(PlankTables.Planks(plan), stream);
        return CsvReader.Rows(stream.ToArray());
    }
}
