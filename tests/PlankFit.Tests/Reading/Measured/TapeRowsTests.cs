using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Units;
using PlankFit.Reading.AsBuilt;

namespace PlankFit.Tests.Reading.Measured;

/// <summary>What measured.csv takes of a hull that is adjusted to it, right and wrong.</summary>
public sealed class TapeRowsTests
{
    private static readonly OffsetTable Table = new(
        [new("0", 0), new("1", 500), new("3", 1500), new("3 A", 2500)],
        [Line("keel edge", 40, 20), Line("chine", 1000, 340), Line("sheer", 1200, 900)]
    );

    private static OffsetLine Line(string name, double b, double h) =>
        new(name, [], [h, h, h, h], [b, b, b, null]);

    private const string Head = "what,where,side,value\n";

    /// <summary>The manual's own examples, and rows twice.</summary>
    [Fact]
    public void EveryKindIsRead()
    {
        (AsBuiltSpec spec, ImmutableArray<Finding> findings) = Read(
            Head
                + "half-breadth,chine/1,starboard,968   # to a string\n"
                + "height,keel edge/1,,21\n"
                + "height, chine / 1 ,port,341\n"
                + "girth,3,port,1010\n"
                + "girth,3,port,1012\n"
                + "across,chine/1,,1937\n"
                + "diagonal,keel edge/0 chine/1,starboard,1130\n"
                + "along keel,1 3,starboard,1001\n"
                + "along chine,1 3,port,1002\n"
                + "seam length,S1-10 after,starboard,1491\n"
                + "short at chine,S1-20,,3\n"
                + "opens at keel,P1-20 forward,,-1\n"
                + "girth,1,port,\n"
        );
        Assert.Empty(findings);
        Assert.Equal(
            [
                "half-breadth chine/1 Starboard 968",
                "height keel edge/1  21",
                "height chine/1 Port 341",
                "girth 3 Port 1010",
                "girth 3 Port 1012",
                "across chine/1  1937",
                "diagonal keel edge/0 chine/1 Starboard 1130",
                "along keel 1 3 Starboard 1001",
                "along chine 1 3 Port 1002",
                "seam length S1-10 after Starboard 1491",
                "short at chine S1-20 Starboard 3",
                "opens at keel P1-20 forward Port -1",
            ],
            spec.Readings.Select(r =>
                FormattableString.Invariant($"{r.Place.What} {r.Place.Where} {r.Place.Side} {r.Mm}")
            )
        );
        // As the hull's own list of girths has it, read twice is the mean.
        Assert.Equal(new("3", Side.Port, 1011), Assert.Single(spec.Girths));
    }

    [Fact]
    public void FeetAndInchesAreRead()
    {
        (AsBuiltSpec spec, ImmutableArray<Finding> findings) = Read(
            Head + "half-breadth,chine/1,starboard,3-3-2+\n",
            LengthUnit.FeetInchesEighths
        );
        Assert.Empty(findings);
        Assert.Equal((39 + (5 / 16.0)) * 25.4, Assert.Single(spec.Readings).Mm, 1e-9);
    }

    [Theory]
    [InlineData("half-breadth,sheer/1,starboard,1200", 2, "lines are keel edge, chine")]
    [InlineData("half-breadth,chine,starboard,968", 2, "a line and a station")]
    [InlineData("half-breadth,chine/9,starboard,968", 2, "stations 0, 1, 3")]
    [InlineData("half-breadth,chine/3 A,starboard,968", 2, "no point of chine at station 3 A")]
    [InlineData("half-breadth,chine/1,,968", 3, "starboard or port")]
    [InlineData("half-breadth,chine/1,starboard,96", 4, "the table has about 1000 mm")]
    [InlineData("across,chine/1,starboard,1937", 3, "leave the cell empty")]
    [InlineData("across,chine/1,,968", 4, "the table has about 2000 mm")]
    [InlineData("diagonal,keel edge/0,starboard,1130", 2, "two points with a blank between")]
    [InlineData("diagonal,keel edge/0 chine/1,starboard,3130", 4, "read the tape again")]
    [InlineData("along keel,1,starboard,1000", 2, "two stations")]
    [InlineData("along keel,1 1,starboard,1000", 2, "are one")]
    [InlineData("along keel,1 3,starboard,100", 4, "read the tape again")]
    [InlineData("height,chine/1,,long", 4, "long")]
    [InlineData("seam length,S1-10,starboard,1491", 2, "S1-10 after")]
    [InlineData("seam length,S1-10 after,port,1491", 3, "is to starboard")]
    [InlineData("seam length,ST1-10 after,,1491", 2, "only the bottom")]
    [InlineData("seam length,S3-10 after,,1491", 2, "2 layers")]
    [InlineData("short at chine,20,,3", 2, "is not a plank's number")]
    [InlineData("short at chine,S1-20,,300", 4, "another plank's")]
    [InlineData("opens at keel,S1-20,,3", 2, "S1-20 forward")]
    [InlineData("half-bredth,chine/1,starboard,968", 1, "did you mean \"half-breadth\"")]
    public void WhatIsWrongIsNamedWithItsPlace(string row, int column, string message)
    {
        (AsBuiltSpec spec, ImmutableArray<Finding> findings) = Read(Head + row + "\n");
        Finding finding = Assert.Single(findings);
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.StartsWith(
            $"measured.csv, line 2, column {column} ",
            finding.Where,
            StringComparison.Ordinal
        );
        Assert.Contains(message, finding.Message, StringComparison.Ordinal);
        Assert.Empty(spec.Readings);
    }

    /// <summary>Without [trust] nothing says what such a reading is worth, girths bend the bottom as ever, and a row twice is a fault.</summary>
    [Fact]
    public void WithoutTrustTheyAreRefusedAndGirthsAreAsEver()
    {
        (AsBuiltSpec spec, ImmutableArray<Finding> findings) = Read(
            Head + "half-breadth,chine/1,starboard,968\ngirth,3,port,1010\ngirth,3,port,1012\n",
            trusted: false
        );
        Assert.Collection(
            findings,
            f => Assert.Contains("add [trust] to the job", f.Message, StringComparison.Ordinal),
            f => Assert.Contains("line 3 already", f.Message, StringComparison.Ordinal)
        );
        Assert.Empty(spec.Readings);
    }

    private static (AsBuiltSpec Spec, ImmutableArray<Finding> Findings) Read(
        string text,
        LengthUnit units = LengthUnit.Millimetre,
        bool trusted = true
    ) =>
        MeasuredText.Read(
            text,
            "measured.csv",
            (units, units),
            Table,
            ["first layer"],
            2,
            new(Panel.Bottom("keel edge", "chine", []), trusted)
        );
}
