using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Reading.Jobs;

namespace PlankFit.Tests.Reading.Offsets;

public class OffsetsTextTests
{
    private static readonly double?[] ChineHeights = [900, 735, 620, 470];

    [Fact]
    public void TheTableOfTheManual()
    {
        OffsetTable table = Texts.Sound().Offsets;
        Assert.Equal([new("0", 0), new("1", 600), new("2", 1200), new("3", 2400)], table.Stations);
        Assert.Equal(["keel edge", "chine"], table.Lines.Select(l => l.Name));
        Assert.Equal(ChineHeights, table.Find("chine")!.HeightsMm);
        Assert.All(table.Find("chine")!.PositionsMm, p => Assert.Null(p));
    }

    [Theory]
    [InlineData(",", ";")]
    [InlineData(",", "\t")]
    [InlineData(",", " , ")]
    [InlineData("chine,", "\"chine\",")]
    [InlineData("620,470", "\"620\",\"470\"")]
    [InlineData("\nchine,h", "\n\n# a note, with \"quotes\nchine,h")]
    [InlineData("line,measure", "Line,MEASURE")]
    [InlineData("620,470", "620,470,,")]
    [InlineData("\n", "\r")]
    public void WrittenOtherwiseItIsTheSameTable(string plain, string other)
    {
        OffsetTable table = Texts
            .Sound(offsets: Texts.Offsets.ReplaceLineEndings("\n").Replace(plain, other))
            .Offsets;
        Assert.Equal(4, table.Stations.Length);
        Assert.Equal(ChineHeights, table.Find("chine")!.HeightsMm);
    }

    [Theory]
    [InlineData("2' 5 1/2\"")]
    [InlineData("\"2' 5 1/2\"\"\"")]
    [InlineData("29 1/2 in")]
    [InlineData("2-5-4")]
    [InlineData("749.3 mm")]
    [InlineData("74.93 cm")]
    public void ACellMayCarryItsOwnUnitInchMarksQuotedOrBare(string cell)
    {
        OffsetTable table = Texts.Sound(offsets: Texts.Offsets.Replace("735", cell)).Offsets;
        Assert.Equal(749.3, table.Find("chine")!.HeightsMm[1]);
        Assert.Equal(620, table.Find("chine")!.HeightsMm[2]);
    }

    [Fact]
    public void AQuotedNameMayHoldTheSeparator()
    {
        Job job = Texts.Sound(
            Texts.Job.Replace("\"keel edge\"", "\"keel, edge\""),
            Texts.Offsets.Replace("keel edge", "\"keel, edge\"")
        );
        Assert.NotNull(job.Offsets.Find("keel, edge"));
    }

    /// <summary>x = greatest position - position; the same hull tabled from aft, columns either way, is the same job.</summary>
    [Theory]
    [InlineData("line,measure,0,1,2,3", ",position,2400,1800,1200,0", false)]
    [InlineData("line,measure,3,2,1,0", ",position,0,1200,1800,2400", true)]
    public void PositionsThatGrowForwardAreTurned(string head, string positions, bool mirrored)
    {
        string job =
            Texts.Job.Replace("[hull]", "[hull]\npositions = \"forward\"")
            + "\nmaster = 1800\n[[ends.zone]]\nfrom = 1500\nto = 2400\nkeel = { cut = \"fit\" }\n";
        string Row(string row) => mirrored ? string.Join(',', row.Split(',').Reverse()) : row;
        string offsets = string.Join(
            '\n',
            head,
            positions,
            "keel edge,height," + Row("620,250,95,15"),
            "keel edge,half-breadth," + Row("25,32,40,55"),
            "chine,position," + Row("2400,1800,1200,-50"),
            "chine,height," + Row("900,735,620,470"),
            "chine,half-breadth," + Row("120,420,650,960")
        );
        Job read = Texts.Sound(job, offsets);
        Assert.Equal(
            [new("0", 0), new("1", 600), new("2", 1200), new("3", 2400)],
            read.Offsets.Stations
        );
        Assert.Equal(ChineHeights, read.Offsets.Find("chine")!.HeightsMm);
        Assert.Equal(
            [0, 600, 1200, 2450],
            read.Offsets.Find("chine")!.PositionsMm.Select(p => p!.Value)
        );
        Assert.Equal(600, ((PlankLayerSpec)read.Layers[0]).MasterMm);
        Assert.Equal((0, 900), (read.Ends.Zones[0].FromMm, read.Ends.Zones[0].ToMm));
    }

    [Fact]
    public void EmptyCellsAreUnknownAndStationsWithOneLineOnlyAreNoted()
    {
        ReadResult result = Texts.Read(
            offsets: """
            line,measure,0,1,2,3,4,5
            ,position,0,600,1200,2400,3000,3600
            keel edge,height,,250,95,15,15,15
            keel edge,half-breadth,,32,40,55,55,55
            chine,height,900,735,,470,460,
            chine,half-breadth,120,420,,960,970,
            """
        );
        Assert.NotNull(result.Job);
        Assert.Null(result.Job.Offsets.Find("chine")!.HeightsMm[2]);
        Texts.Finds(
            result,
            Severity.Note,
            "offsets.csv, line 5, column 3 (station 0)",
            "only chine"
        );
        Texts.Finds(
            result,
            Severity.Note,
            "offsets.csv, line 3, column 8 (station 5)",
            "only keel edge"
        );
        Assert.Equal(2, result.Findings.Length);
    }

    [Fact]
    public void KeelAndChineMayMeetAtTheStem() =>
        Texts.Sound(offsets: Texts.Offsets.Replace("900,", "620,").Replace("120,420", "25,420"));
}
