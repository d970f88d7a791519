using PlankFit.Planking.Units;
using PlankFit.Reading.AsBuilt;
using PlankFit.Reading.Editing;
using PlankFit.Reading.Lengths;

namespace PlankFit.Tests.Reading.Measured;

/// <summary>Rows put into the file of what was measured: once each, and every other line as it was.</summary>
public sealed class MeasuredWritingTests
{
    private const string Mark = "0123456789ab",
        Other = "ba9876543210";

    private static MeasuredEntry Row(string mark, params string[] cells) => new(mark, [.. cells]);

    [Fact]
    public void OnceEachAndInTheirPlace()
    {
        MeasuredEntry[] rows =
        [
            Row(Mark, "girth", "3", "port", "1104"),
            Row(Other, "girth", "3", "port", "1105"),
        ];
        string with = MeasuredWriting.With(MeasuredWriting.Empty, rows, _ => false);
        Assert.Equal(
            $"what,where,side,value\ngirth,3,port,1104    # page {Mark}\ngirth,3,port,1105    # page {Other}\n",
            with
        );
        Assert.Equal(with, MeasuredWriting.With(with, rows, _ => false));
        // Read anew, or taken back.
        Assert.Equal(
            $"what,where,side,value\ngirth,3,port,1105    # page {Other}\n",
            MeasuredWriting.With(with, [], m => m == Mark)
        );
        Assert.True(MeasuredWriting.IsAllOf(with, m => m is Mark or Other));
        Assert.False(MeasuredWriting.IsAllOf(with, m => m == Mark));
        Assert.False(MeasuredWriting.IsAllOf(with + "girth,4,port,1\n", _ => true));
    }

    /// <summary>Another hand's lines, its separator, its ends of line and a last line without one stay.</summary>
    [Theory]
    [InlineData("what;where;side;value\r\ngirth;3;port;1104 # by hand", ';', "\r\n")]
    [InlineData("\n# remark\nwhat\twhere\tside\tvalue\n\n", '\t', "\n")]
    [InlineData("what,where,side,value", ',', "\n")]
    [InlineData("", ',', "\n")]
    public void AnotherHandsLinesStay(string text, char separator, string newLine)
    {
        string with = MeasuredWriting.With(
            text,
            [Row(Mark, "girth", "4", "port", "1104")],
            _ => false
        );
        Assert.StartsWith(text, with, StringComparison.Ordinal);
        Assert.EndsWith(
            string.Join(separator, "girth", "4", "port", $"1104    # page {Mark}") + newLine,
            with,
            StringComparison.Ordinal
        );
        Assert.Equal(
            text.TrimEnd('\r', '\n'),
            MeasuredWriting.With(with, [], _ => true).TrimEnd('\r', '\n') is var back
            && text.Length == 0
                ? ""
                : back
        );
    }

    /// <summary>A remark alone, and no end of its line: the head is a line of its own.</summary>
    [Theory]
    [InlineData("# my readings", "\n")]
    [InlineData("\r\n# my readings", "\r\n")]
    public void TheHeadIsNoPartOfARemark(string text, string newLine) =>
        Assert.Equal(
            $"{text}{newLine}what,where,side,value{newLine}girth,4,port,1104    # page {Mark}{newLine}",
            MeasuredWriting.With(text, [Row(Mark, "girth", "4", "port", "1104")], _ => false)
        );

    /// <summary>Inches are written without their quotes, and are read as the same length.</summary>
    [Theory]
    [InlineData("4'-10 11/16\"", "4'-10 11/16 in")]
    [InlineData("11/16\"", "11/16 in")]
    [InlineData("72 in", "72 in")]
    public void NoQuotesInARow(string length, string cell)
    {
        Assert.Equal(cell, MeasuredWriting.Value(length, LengthUnit.Foot));
        Assert.Equal(
            LengthNotation.Read(length, LengthUnit.Foot).Mm,
            LengthNotation.Read(cell, LengthUnit.Foot).Mm
        );
        Assert.True(LengthNotation.Read(cell, LengthUnit.Foot).Ok);
        Assert.Equal(
            LengthNotation.Read(length, LengthUnit.FeetInchesEighths).Mm,
            LengthNotation.Read(cell, LengthUnit.FeetInchesEighths).Mm
        );
    }

    /// <summary>What a spreadsheet would take for a formula is guarded, quotes and separators are quoted, and a name with a # is refused.</summary>
    [Fact]
    public void NoFormulaAndNoSecondRow()
    {
        Assert.Equal(
            $"what,where,side,value\nheight,'=cmd|x/3,,\"5'-4 3/4\"\"\"    # page {Mark}\n",
            MeasuredWriting.With(
                MeasuredWriting.Empty,
                [Row(Mark, "height", "=cmd|x/3", "", "5'-4 3/4\"")],
                _ => false
            )
        );
        Assert.False(MeasuredWriting.Holds(Row(Mark, "height", "chine #2/3", "", "1")));
        Assert.False(MeasuredWriting.Holds(Row(Mark, "height", "chine\n/3", "", "1")));
        Assert.True(MeasuredWriting.Holds(Row(Mark, "height", "chine, \"low\"/3", "", "1")));
    }

    /// <summary>What is typed is read in the units that are shown, as the fields of a job are, and says the same wherever it is read afterwards.</summary>
    [Theory]
    [InlineData("1491", LengthUnit.Millimetre, LengthUnit.Millimetre, "1491 mm", 1491)]
    [InlineData("1491,5", LengthUnit.Millimetre, LengthUnit.Millimetre, "1491.5 mm", 1491.5)]
    [InlineData(
        "4'-10 11/16\"",
        LengthUnit.Millimetre,
        LengthUnit.Millimetre,
        "4'-10 11/16\"",
        1490.6625
    )]
    [InlineData("6", LengthUnit.Foot, LengthUnit.Millimetre, "6 in", 152.4)]
    [InlineData("6", LengthUnit.Inch, LengthUnit.Inch, "6 in", 152.4)]
    [InlineData("6", LengthUnit.Foot, LengthUnit.Foot, "72 in", 1828.8)]
    [InlineData("149.1", LengthUnit.Centimetre, LengthUnit.Centimetre, "1491 mm", 1491)]
    [InlineData("1491", LengthUnit.Millimetre, LengthUnit.Inch, "1491 mm", 1491)]
    [InlineData("\u22123", LengthUnit.Millimetre, LengthUnit.Millimetre, "-3 mm", -3)]
    public void WhatIsTypedCarriesItsUnit(
        string typed,
        LengthUnit shown,
        LengthUnit written,
        string text,
        double mm
    )
    {
        Assert.Equal(text, ShownLength.WithItsUnit(typed, shown, written));
        Assert.Equal(mm, ShownLength.OfItsUnit(text)!.Value, 1e-9);
    }

    [Theory]
    [InlineData("")]
    [InlineData("=1+1")]
    [InlineData("1,491")]
    [InlineData("1e999")]
    [InlineData("NaN")]
    [InlineData("<img>")]
    [InlineData("12 apples")]
    [InlineData("99999999999")]
    public void WhatIsNoLengthIsNone(string typed)
    {
        Assert.Null(ShownLength.WithItsUnit(typed, LengthUnit.Millimetre, LengthUnit.Millimetre));
        Assert.Null(ShownLength.OfItsUnit(typed));
    }

    [Fact]
    public void AJobsTextNamesTheFile()
    {
        foreach (
            (string job, string want) in new[]
            {
                ("a = 1", "a = 1\n\n[as-built]\nmeasured = \"m.csv\"\n"),
                (
                    "[as-built]\r\nfrom = \"0\"\r\n",
                    "[as-built]\r\nfrom = \"0\"\r\nmeasured = \"m.csv\"\r\n"
                ),
                (
                    "[as-built]\nmeasured = 'x' # tape\n",
                    "[as-built]\nmeasured = \"m.csv\" # tape\n"
                ),
            }
        )
        {
            string named = MeasuredNamed.With(job, "m.csv")!;
            Assert.Equal("m.csv", MeasuredNamed.Of(named));
            Assert.Equal(want, named);
        }

        // A table in one line at the top of all tables takes no second one.
        Assert.Null(MeasuredNamed.With("[[as-built]]\n", "m.csv"));
        Assert.Null(MeasuredNamed.Of("[hull]\n"));
    }
}
