using PlankFit.Planking.Findings;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Reading.Jobs;

namespace PlankFit.Tests.Reading.Offsets;

/// <summary>One thing wrong at a time in the table: found at its cell, shown as written.</summary>
public class OffsetsFaultTests
{
    [Theory]
    [InlineData(
        "735",
        "abc",
        "line 6, column 4 (station 1)",
        "chine, height",
        "\"abc\"",
        "accepted"
    )]
    [InlineData("735", "NaN", "line 6, column 4 (station 1)", "\"NaN\"", "not a number")]
    [InlineData("735", "inf", "line 6, column 4 (station 1)", "\"inf\"", "not a number")]
    [InlineData("735", "1e3", "line 6, column 4 (station 1)", "\"1e3\"", "exponent")]
    [InlineData("735", "\"7,35\"", "line 6, column 4 (station 1)", "\"7,35\"", "comma")]
    [InlineData("735", "735 yd", "line 6, column 4 (station 1)", "\"735 yd\"", "mm, cm, m, in, ft")]
    [InlineData("735", "5-12-0", "line 6, column 4 (station 1)", "12 inches")]
    [InlineData("735", "5' 14\"", "line 6, column 4 (station 1)", "\"5' 14\"\"", "12 inches")]
    [InlineData("420", "-420", "line 7, column 4 (station 1)", "\"-420\"", "half-breadth")]
    [InlineData(
        "0,600,1200",
        "0,1200,600",
        "line 3, column 5 (station 2)",
        "out of order",
        "station 1"
    )]
    [InlineData("0,600,1200", "0,600,600", "line 3, column 5 (station 2)", "same position")]
    [InlineData("0,600,1200", "0,,1200", "line 3, column 4 (station 1)", "no position")]
    [InlineData("0,600,1200", "0,six,1200", "line 3, column 4 (station 1)", "\"six\"")]
    [InlineData(
        "0,600,1200,2400",
        "2400,1200,600,0",
        "line 3, column 4 (station 1)",
        "positions = \"forward\""
    )]
    [InlineData(",position,0,600,1200,2400\n", "", "", "no positions")]
    [InlineData(
        "measure,0,1,2,3",
        "measure,0,1,1,3",
        "line 2, column 5",
        "\"1\" is given twice",
        "column 4"
    )]
    [InlineData("measure,0,1,2,3", "measure,0,,2,3", "line 2, column 4", "without a name")]
    [InlineData("line,measure,0", "name,what,0", "line 2", "name,what", "line,measure")]
    [InlineData("line,measure,0,1,2,3", "line,measure", "line 2", "no stations")]
    [InlineData(
        "chine,height",
        "keel edge,height",
        "line 6",
        "keel edge, height is given twice",
        "line 4"
    )]
    [InlineData("chine,height", "chine,hieght", "line 6", "\"hieght\"", "did you mean \"height\"")]
    [InlineData("chine,height", ",height", "line 6", "without the name of its line")]
    [InlineData("620,470", "620", "line 6", "5 cells where the head has 6")]
    [InlineData("620,470", "620,470,480", "line 6", "7 cells where the head has 6")]
    [InlineData("620,470", "620,\"470", "line 6", "not closed")]
    [InlineData(
        "\nchine,half-breadth,120,420,650,960",
        "",
        "line 6",
        "chine has heights but no half-breadths"
    )]
    [InlineData(
        "chine,height,900,735,620,470\n",
        "",
        "line 6",
        "chine has half-breadths but no heights"
    )]
    [InlineData("900,735,620,470", ",735,,", "line 6", "chine has 1 point ")]
    [InlineData("900,735,620,470", ",735,620,470", "", "3 stations", "4 or more")]
    [InlineData(
        "900,735,620,470",
        "900,200,620,470",
        "line 6, column 4 (station 1)",
        "cross",
        "below the keel"
    )]
    [InlineData(
        "120,420,650,960",
        "120,30,650,960",
        "line 7, column 4 (station 1)",
        "cross",
        "inboard of the keel"
    )]
    [InlineData(
        "900,735,620,470\nchine,half-breadth,120,420,650,960",
        "900,735,620,15\nchine,half-breadth,120,420,650,55",
        "line 6, column 6 (station 3)",
        "meet in a point"
    )]
    [InlineData(
        "chine,height",
        "chine,position,0,600,500,2400\nchine,height",
        "line 6, column 5 (station 2)",
        "runs back"
    )]
    public void InTheTable(string sound, string spoiled, string where, params string[] words)
    {
        string text = Texts.Offsets.ReplaceLineEndings("\n");
        Assert.Contains(sound, text);
        Texts.Finds(
            Texts.Read(offsets: text.Replace(sound, spoiled)),
            Severity.Error,
            where.Length == 0 ? "offsets.csv" : "offsets.csv, " + where,
            words
        );
    }

    [Theory]
    [InlineData("")]
    [InlineData("# nothing but words\n\n,,,\n")]
    public void AnEmptyTable(string text) =>
        Texts.Finds(Texts.Read(offsets: text), Severity.Error, "offsets.csv", "empty");

    [Fact]
    public void ALineThatTheTableHasNotIsNamedWithTheNearest() =>
        Texts.Finds(
            Texts.Read(Texts.Job.Replace("chine = \"chine\"", "chine = \"chime\"")),
            Severity.Error,
            "job.toml, line 9, column 9",
            "\"chime\"",
            "did you mean \"chine\"",
            "keel edge"
        );

    [Fact]
    public void ALineBetweenThatTheTableHasNot() =>
        Texts.Finds(
            Texts.Read(Texts.Job.Replace("[[layer]]", "between = [\"bilge\"]\n[[layer]]")),
            Severity.Error,
            "job.toml, line 11, column 12",
            "between",
            "\"bilge\""
        );

    [Fact]
    public void ABareNumberInATableOfEighths()
    {
        ReadResult result = Texts.Read(
            Texts
                .Job.Replace("\"mm\"", "\"ft-in-8\"")
                .Replace("= 9", "= \"3/8 in\"")
                .Replace("= 150", "= \"6 in\"")
        );
        Texts.Finds(
            result,
            Severity.Error,
            "offsets.csv, line 3, column 4 (station 1)",
            "\"600\"",
            "bare number"
        );
        Assert.DoesNotContain(result.Findings, f => f.Where.Contains("line 3, column 3 "));
    }

    [Fact]
    public void ALineThatTheBottomDoesNotUseMayHaveHeightsAlone()
    {
        ReadResult result = Texts.Read(offsets: Texts.Offsets + "\nsheer,height,1,2,3,4\n");
        Texts.Finds(
            result,
            Severity.Note,
            "offsets.csv, line 8",
            "sheer has heights but no half-breadths"
        );
        Assert.NotNull(result.Job);
    }

    [Fact]
    public void ABottomThatIsTheWrongWayUpIsDoubted()
    {
        ReadResult result = Texts.Read(
            offsets: Texts.Offsets.Replace("900,735,620,470", "-900,-735,-620,-470")
        );
        Texts.Finds(result, Severity.Warning, "offsets.csv", "wrong way round");
    }

    /// <summary>Once for all stations, and what it is likeliest to be.</summary>
    [Fact]
    public void KeelAndChineExchangedIsToldOnce()
    {
        ReadResult result = Texts.Read(
            Texts
                .Job.Replace("keel  = \"keel edge\"", "keel  = \"chine\"")
                .Replace("chine = \"chine\"", "chine = \"keel edge\"")
        );
        Assert.Single(result.Findings, f => f.Severity == Severity.Error);
        Texts.Finds(
            result,
            Severity.Error,
            "offsets.csv",
            "keel edge, taken for the chine, lies inboard of chine, taken for the keel",
            "exchanged"
        );
    }

    [Fact]
    public void WithoutUnitsTheCellsAreNotJudged()
    {
        ReadResult result = Texts.Read(Texts.Job.Replace("\"mm\"", "\"furlong\""), "rubbish");
        Assert.Equal("job.toml, line 3, column 9", Assert.Single(result.Findings).Where);
    }
}
