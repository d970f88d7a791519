using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Units;
using PlankFit.Reading.AsBuilt;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Reading.Measured;

/// <summary>measured.csv as a builder writes it, right and wrong.</summary>
public sealed class MeasuredTextTests
{
    private static readonly OffsetTable Table = new(
        [new("0", 0), new("1", 500), new("3", 1500)],
        []
    );

    /// <summary>The manual's own example.</summary>
    [Fact]
    public void TheManualsExampleIsRead()
    {
        (AsBuiltSpec spec, ImmutableArray<Finding> findings) = Read(
            "what,where,side,value        # one row a measurement"
                + "\n# on the frames, before lunch\n"
                + "keel half-width,first layer/3,starboard,46.0   # layer, station\n"
                + "girth,3,port,1104\n"
                + "seam at keel,S1-10,starboard,3817\n"
                + "seam at chine,S1-10,starboard,4921\n"
        );
        Assert.Empty(findings);
        Assert.Equal(new("first layer", "3", Side.Starboard, 46), spec.KeelHalfWidths.Single());
        Assert.Equal(new("3", Side.Port, 1104), spec.Girths.Single());
        Assert.Equal(
            [
                new(Named.Plank("S1-10"), PanelEdge.Lower, 3817),
                new(Named.Plank("S1-10"), PanelEdge.Upper, 4921),
            ],
            spec.Seams
        );
    }

    [Fact]
    public void FeetInchesAndEighthsAreRead()
    {
        (AsBuiltSpec spec, ImmutableArray<Finding> findings) = Read(
            "what,where,side,value\ngirth,1,port,3-7-4+\n",
            LengthUnit.FeetInchesEighths
        );
        Assert.Empty(findings);
        Assert.Equal((43 + (9 / 16.0)) * 25.4, spec.Girths.Single().Mm, 1e-9);
        (spec, findings) = Read(
            "what,where,side,value\ngirth,1,port,43 9/16 in\n",
            LengthUnit.FeetInchesEighths
        );
        Assert.Empty(findings);
        Assert.Equal((43 + (9 / 16.0)) * 25.4, spec.Girths.Single().Mm, 1e-9);
    }

    [Theory]
    [InlineData("girht,3,port,1104", "line 2, column 1 (what)", "did you mean \"girth\"")]
    [InlineData("girth,4,port,1104", "line 2, column 2 (where)", "it has 0, 1, 3")]
    [InlineData("girth,3,larboard,1104", "line 2, column 3 (side)", "starboard or port")]
    [InlineData("girth,3,port,long", "line 2, column 4 (value)", "long")]
    [InlineData("girth,3,port,-4", "line 2, column 4 (value)", "greater than 0")]
    [InlineData("girth,3,port", "line 2, column 1 (what)", "this one has 3")]
    [InlineData("keel half-width,3,port,40", "line 2, column 2 (where)", "first layer/3")]
    [InlineData(
        "keel half-width,frist layer/3,port,40",
        "line 2, column 2 (where)",
        "there is \"first layer\""
    )]
    [InlineData(
        "keel half-width,first layer/9,port,40",
        "line 2, column 2 (where)",
        "it has 0, 1, 3"
    )]
    [InlineData("seam at keel,10,port,400", "line 2, column 2 (where)", "S1-10")]
    [InlineData("seam at keel,S3-10,starboard,400", "line 2, column 2 (where)", "2 layers")]
    [InlineData("seam at keel,S1-10,port,400", "line 2, column 3 (side)", "is to starboard")]
    [InlineData("wombat,3,port,1104", "line 2, column 1 (what)", "is not measured here. Accepted")]
    [InlineData("seam at keel,S1-010,starboard,400", "line 2, column 2 (where)", "S1-10")]
    [InlineData("seam at keel,S99999999999-10,starboard,400", "line 2, column 2 (where)", "S1-10")]
    [InlineData(
        "keel half-width,first layer/3,port,40\nkeel half-width,first layer / 3,port,41",
        "line 3, column 2 (where)",
        "line 2 already"
    )]
    [InlineData(
        "girth,3,port,1104\ngirth,3,port,1105",
        "line 3, column 2 (where)",
        "line 2 already"
    )]
    public void WhatIsWrongIsNamedWithItsPlace(string rows, string where, string message)
    {
        (_, ImmutableArray<Finding> findings) = Read("what,where,side,value\n" + rows + "\n");
        Finding finding = Assert.Single(findings);
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal("measured.csv, " + where, finding.Where);
        Assert.Contains(message, finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AllFaultsComeAtOnce()
    {
        (_, ImmutableArray<Finding> findings) = Read(
            "what,where,side,value\ngirth,4,port,1\nseam at keel,X,port,2\ngirth,1,top,3\n"
        );
        Assert.Equal(3, findings.Length);
    }

    [Theory]
    [InlineData("")]
    [InlineData("where,what,side,value\n")]
    public void AFileWithoutItsHeadIsRefused(string text)
    {
        (_, ImmutableArray<Finding> findings) = Read(text);
        Assert.Contains("what,where,side,value", Assert.Single(findings).Message);
    }

    private static (AsBuiltSpec, ImmutableArray<Finding>) Read(
        string text,
        LengthUnit units = LengthUnit.Millimetre
    ) => MeasuredText.Read(text, "measured.csv", (units, units), Table, ["first layer"], 2);

    /// <summary>By its first line it is known whether rows may be written behind it.</summary>
    [Theory]
    [InlineData("", true)]
    [InlineData("what,where,side,value\n", true)]
    [InlineData("What;Where;Side;Value\r\ngirth;3;port;300    # page 0123456789ab\r\n", true)]
    [InlineData("length,width,count\n4000,150,20\n", false)]
    [InlineData("girth,3,port,300\n", false)]
    [InlineData("somebody's own\n", false)]
    public void AFileOfReadingsIsKnownByItsHead(string text, bool isOne) =>
        Assert.Equal(isOne, MeasuredText.IsOne(text));
}
