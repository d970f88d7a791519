using PlankFit.Planking.Units;
using PlankFit.Reading.Editing;

namespace PlankFit.Tests.Reading.Editing;

/// <summary>A length is shown, and read when it is typed, as the job's own reader has it, whatever the job is written in.</summary>
public sealed class ShownLengthTests
{
    /// <summary>By units: how a job writes six inches, or 150 mm, and what that is.</summary>
    public static TheoryData<string, string, double> Written =>
        new()
        {
            { "mm", "150", 150 },
            { "cm", "15", 150 },
            { "m", "0.15", 150 },
            { "in", "6", 152.4 },
            { "in", "\"6 in\"", 152.4 },
            { "ft", "0.5", 152.4 },
            { "ft", "\"6 in\"", 152.4 },
            { "ft-in-8", "\"6 in\"", 152.4 },
        };

    private static string Job(string units, string width) =>
        $"[job]\nunits = \"{units}\"\n[[layer]]\nname = \"skin\"\nwidth = {width}\n";

    private static JobField Width(string text) =>
        JobFields.Of(text).Single(f => f.Address == "layer[0].width");

    private static LengthUnit Unit(string name) => LengthUnits.Find(name)!.Value;

    [Theory]
    [MemberData(nameof(Written))]
    public void ItIsShownAsTheReaderHasIt(string units, string width, double mm)
    {
        LengthUnit written = Unit(units),
            other = LengthUnits.IsMetric(written) ? LengthUnit.Foot : LengthUnit.Millimetre;
        Assert.Equal(
            LengthText.FormatExact(mm, other),
            ShownLength.Of(Width(Job(units, width)), written, other)
        );
    }

    /// <summary>In the other system what is typed is what is shown; in the job's own system it is the text's own, a bare number in the job's unit.</summary>
    [Theory]
    [MemberData(nameof(Written))]
    public void WhatIsTypedIsWrittenAsItIsMeant(string units, string width, double mm)
    {
        string text = Job(units, width),
            shown = LengthUnits.IsMetric(Unit(units)) ? "ft" : "mm",
            own = shown == "ft" ? "mm" : "ft",
            typed = shown == "mm" ? $"{mm}" : "6",
            written = ShownLength.Typed(text, "layer[0].width", typed, (shown, 0));
        double meant = shown == "mm" ? mm : 152.4;
        Assert.Equal(
            meant,
            LengthUnits.IsMetric(Unit(units))
                ? double.Parse(written, System.Globalization.CultureInfo.InvariantCulture)
                    * LengthUnits.MmPer(Unit(units))
                : Reading(written, Unit(units)),
            0.001
        );
        Assert.Equal(
            width.Trim('"'),
            ShownLength.Typed(text, "layer[0].width", width.Trim('"'), (own, 0))
        );
    }

    private static double Reading(string text, LengthUnit units) =>
        PlankFit.Reading.Lengths.LengthNotation.Read(text, units).Mm;
}
