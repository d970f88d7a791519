using CsCheck;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Lengths;
using PlankFit.Reading.Panels;
using PlankFit.Reading.Ranges;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Reading.Ranges;

/// <summary>Ranges of values as somebody writes them, in every unit of a job.</summary>
public sealed class ValueRangeTests
{
    private static string Typed(JobKey key, string written, LengthUnit units)
    {
        RangeReading read = ValueRange.Read(key, written, units, $"--{key.Name}");
        Assert.Equal(
            [],
            read.Findings.Where(f => f.Severity == Severity.Error).Select(f => f.Message)
        );
        return string.Join(" | ", read.Values.Select(v => v.Typed));
    }

    [Theory]
    [InlineData("100,120,150", LengthUnit.Millimetre, "100 | 120 | 150")]
    [InlineData(
        "100..150",
        LengthUnit.Millimetre,
        "100 | 105 | 110 | 115 | 120 | 125 | 130 | 135 | 140 | 145 | 150"
    )]
    [InlineData("100..150:20", LengthUnit.Millimetre, "100 | 120 | 140 | 150")]
    [InlineData("100 .. 101", LengthUnit.Millimetre, "100 | 101")]
    [InlineData("12.5..13:0.25,15", LengthUnit.Centimetre, "12.5 | 12.75 | 13 | 15")]
    [InlineData("0.1..0.12:0.01", LengthUnit.Metre, "0.1 | 0.11 | 0.12")]
    [InlineData("5..6:1/4 in", LengthUnit.Inch, "5 | 5 1/4\" | 5 1/2\" | 5 3/4\" | 6")]
    [InlineData("5 in..6 1/2 in:1/2 in", LengthUnit.Foot, "5 in | 5 1/2\" | 6\" | 6 1/2 in")]
    [InlineData(
        "0-5-0..0-6-0:0-0-3",
        LengthUnit.FeetInchesEighths,
        "0-5-0 | 0-5-3 | 0-5-6 | 0-6-0"
    )]
    [InlineData(
        "0-5-0..0-6-0",
        LengthUnit.FeetInchesEighths,
        "0-5-0 | 0-5-1 | 0-5-2 | 0-5-3 | 0-5-4 | 0-5-5 | 0-5-6 | 0-5-7 | 0-6-0"
    )]
    [InlineData(
        "5 in..6 in:8 mm",
        LengthUnit.Inch,
        "5 in | 5.31496063 in | 5.62992126 in | 5.94488189 in | 6 in"
    )]
    [InlineData("120,120 mm,120", LengthUnit.Millimetre, "120")]
    public void WidthsAreReadAsTheJobWritesLengths(
        string written,
        LengthUnit units,
        string values
    ) => Assert.Equal(values, Typed(LayerKeys.Width, written, units));

    [Theory]
    [InlineData("40..50", "40 | 41 | 42 | 43 | 44 | 45 | 46 | 47 | 48 | 49 | 50")]
    [InlineData("40..45:2.5,60", "40 | 42.5 | 45 | 60")]
    [InlineData("30..70", "30 | 35 | 40 | 45 | 50 | 55 | 60 | 65 | 70")]
    public void AnglesAreNumbers(string written, string values) =>
        Assert.Equal(values, Typed(LayerKeys.Angle, written, LengthUnit.FeetInchesEighths));

    [Fact]
    public void PositionsMayLieBeforeTheFirstStation() =>
        Assert.Equal(
            "-200 | 0 | 200",
            Typed(LayerKeys.Master, "-200..200:200", LengthUnit.Millimetre)
        );

    [Fact]
    public void HeadingsAreWords() =>
        Assert.Equal("forward | aft", Typed(LayerKeys.Heading, "forward,aft", LengthUnit.Inch));

    /// <summary>The job's own words for what is wrong, the option and its value before them.</summary>
    [Theory]
    [InlineData("width", "0", "--width 0: [[layer]] width = 0: must be greater than 0")]
    [InlineData("width", "wide", "--width wide: [[layer]] width = \"wide\": ")]
    [InlineData(
        "angle",
        "180",
        "--angle 180: [[layer]] angle = 180: planks at this angle never leave the keel; accepted: degrees greater than 0 and less than 180"
    )]
    [InlineData("angle", "40..200", "--angle 200: [[layer]] angle = 200: planks at this angle")]
    [InlineData(
        "heads",
        "afft",
        "--heads afft: [[layer]] heads = \"afft\": is not known (did you mean \"aft\"?)"
    )]
    [InlineData("heads", "aft..forward", "--heads aft..forward: words have nothing between them")]
    [InlineData(
        "angle",
        "50..40",
        "--angle 50..40: a run goes from the lesser to the greater value"
    )]
    [InlineData("angle", "40..", "--angle 40..: this is no run")]
    [InlineData(
        "angle",
        "40..50:0",
        "--angle 40..50:0: the step \"0\" is not a number greater than 0"
    )]
    [InlineData("angle", "40..50:x", "--angle 40..50:x: the step \"x\" is not")]
    [InlineData(
        "width",
        "100..150:-5",
        "--width 100..150:-5: the step \"-5\" is not a length greater than 0"
    )]
    [InlineData("angle", "40..50:0.001", "--angle 40..50:0.001: these are more than 200 values")]
    [InlineData("angle", "40,,50", "--angle \"40,,50\": a value is missing")]
    [InlineData("angle", "", "--angle \"\": a value is missing")]
    public void WhatIsWrongIsToldAsTheJobTellsIt(string name, string written, string told)
    {
        RangeReading read = ValueRange.Read(
            LayerKeys.Table.Find(name)!,
            written,
            LengthUnit.Millimetre,
            $"--{name}"
        );
        Finding fault = Assert.Single(read.Findings, f => f.Severity == Severity.Error);
        Assert.StartsWith(told, $"{fault.Where}: {fault.Message}", StringComparison.Ordinal);
    }

    [Fact]
    public void ABareNumberIsNoLengthWhereTheJobIsInEighths() =>
        Assert.Contains(
            ValueRange
                .Read(LayerKeys.Width, "120", LengthUnit.FeetInchesEighths, "--width")
                .Findings,
            f => f.Severity == Severity.Error
        );

    [Fact]
    public void WhatIsUnlikelyIsAsked() =>
        Assert.Contains(
            "unlikely width",
            Assert
                .Single(
                    ValueRange
                        .Read(LayerKeys.Width, "120,1200", LengthUnit.Millimetre, "--width")
                        .Findings
                )
                .Message,
            StringComparison.Ordinal
        );

    /// <summary>Every value of a run by chance, read by the job's own notation, is what the run says in exact steps.</summary>
    [Fact]
    public void WhatIsWrittenIsWhatIsMeant() =>
        Gen.Select(Gen.Enum<LengthUnit>(), Gen.Int[400, 1600], Gen.Int[1, 60], Gen.Int[1, 40])
            .Sample(
                (units, from, step, count) =>
                {
                    // In sixteenths of an inch or in tenths of a millimetre, as the rule is.
                    bool metric = LengthUnits.IsMetric(units);
                    string Text(int n) => metric ? $"{n / 10}.{n % 10} mm" : $"{n}/16 in";
                    double worth = metric ? 0.1 : LengthUnits.MmPerInch / 16;
                    RangeReading read = ValueRange.Read(
                        LayerKeys.Width,
                        $"{Text(from)}..{Text(from + (step * count))}:{Text(step)}",
                        units,
                        "--width"
                    );
                    Assert.Equal(count + 1, read.Values.Length);
                    for (int i = 0; i <= count; i++)
                    {
                        double meant = worth * (from + (i * step));
                        Assert.Equal(meant, read.Values[i].Figure, 1e-9);
                        string typed = read.Values[i].Typed;
                        LengthReading written = decimal.TryParse(typed, out decimal bare)
                            ? LengthNotation.OfNumber(bare, units)
                            : LengthNotation.Read(typed, units);
                        Assert.True(written.Ok, typed);
                        Assert.Equal(meant, written.Mm, 1e-6);
                    }
                },
                iter: LongRuns.Of(100, 3000)
            );
}
