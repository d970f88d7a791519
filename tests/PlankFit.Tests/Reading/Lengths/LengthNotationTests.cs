using PlankFit.Planking.Units;
using PlankFit.Reading.Lengths;

namespace PlankFit.Tests.Reading.Lengths;

public class LengthNotationTests
{
    private const LengthUnit Eighths = LengthUnit.FeetInchesEighths;

    /// <summary>Readings of the lofting-table notation, worked by hand where nothing else is said; 1 in = 25.4 mm exactly.</summary>
    [Theory]
    [InlineData("2-3-4", 698.5)] // common practice, no source: 2 ft 3 4/8 in = 27.5 in
    [InlineData("1-03-7+", 404.8125)] // common practice, no source: 15 15/16 in; a leading zero in the inches group
    [InlineData("1-10-2+", 566.7375)] // common practice, no source: + is a sixteenth; 22.3125 in
    [InlineData("1-3-4-", 392.1125)] // from memory: - is a sixteenth less; 15 7/16 in
    [InlineData("5-4-6", 1644.65)]
    [InlineData("5-4-6+", 1646.2375)] // 5 ft 4 13/16 in
    [InlineData("5-4-6 1/2", 1646.2375)]
    [InlineData("5-4-6 1/4", 1645.44375)]
    [InlineData("5-4-6¾", 1647.03125)]
    [InlineData("-0-3-4", -88.9)]
    [InlineData("-0-3-4+", -90.4875)] // the minus in front takes the whole
    [InlineData("0-0-0", 0)]
    [InlineData("5–4–6", 1644.65)] // the dash of a word processor
    [InlineData(" 5-4-6 ", 1644.65)]
    public void FeetInchesEighths(string text, double mm)
    {
        foreach (LengthUnit units in Enum.GetValues<LengthUnit>())
        {
            Assert.Equal(LengthReading.Of(mm), LengthNotation.Read(text, units));
            Assert.Equal(LengthReading.Of(mm), LengthNotation.ReadCell(text, units));
        }
    }

    [Theory]
    [InlineData("9 mm", 9)]
    [InlineData("9mm", 9)]
    [InlineData("1.2 m", 1200)]
    [InlineData("12.25 cm", 122.5)]
    [InlineData("3/8 in", 9.525)]
    [InlineData("2 1/2 in", 63.5)]
    [InlineData("2-1/2 in", 63.5)]
    [InlineData("2½ in", 63.5)]
    [InlineData("⅜\"", 9.525)]
    [InlineData("5/4 in", 31.75)] // five-quarter stock
    [InlineData("5'-4 3/4\"", 1644.65)] // feet, inches and a fraction, = 5-4-6
    [InlineData("5' 4.75\"", 1644.65)]
    [InlineData("5′ 4¾″", 1644.65)]
    [InlineData("5ft 4 3/4in", 1644.65)]
    [InlineData("1'-10 1/2\"", 571.5)] // Clark, Amateur Work vol. 3 (c. 1903): 22.5 in
    [InlineData("6 ft", 1828.8)]
    [InlineData("5 1/2 ft", 1676.4)]
    [InlineData("-2.5 in", -63.5)]
    [InlineData("−2.5 in", -63.5)]
    [InlineData(".5 in", 12.7)]
    [InlineData("64.8125 in", 1646.2375)]
    [InlineData("0", 0)]
    [InlineData("-0", 0)]
    [InlineData("0.0", 0)]
    public void ATextCarriesItsOwnUnitInEveryJob(string text, double mm)
    {
        foreach (LengthUnit units in Enum.GetValues<LengthUnit>())
        {
            LengthReading reading = LengthNotation.Read(text, units);
            Assert.Equal(LengthReading.Of(mm), reading);
            Assert.False(double.IsNegative(reading.Mm) && reading.Mm == 0, "minus nought");
        }
    }

    [Theory]
    [InlineData("12.5", LengthUnit.Millimetre, 12.5)]
    [InlineData("12.5", LengthUnit.Centimetre, 125)]
    [InlineData("1.835", LengthUnit.Metre, 1835)]
    [InlineData("12.5", LengthUnit.Inch, 317.5)]
    [InlineData("12 1/2", LengthUnit.Inch, 317.5)]
    [InlineData("1.5", LengthUnit.Foot, 457.2)]
    [InlineData("-15", LengthUnit.Millimetre, -15)]
    public void ABareNumberIsInTheJobsUnits(string text, LengthUnit units, double mm) =>
        Assert.Equal(LengthReading.Of(mm), LengthNotation.Read(text, units));

    [Theory]
    [InlineData("5-4-8", "8 eighths")]
    [InlineData("5-12-0", "12 inches")]
    [InlineData("1-54", "more than one way")] // Stephens 1889, Plate XI (read in a transcription) prints eighths run on: 1 ft 5 4/8 in
    [InlineData("0-11", "more than one way")] // the same plate: 11 in at station X, 1 1/8 in at station 13
    [InlineData("1 54", "more than one way")]
    [InlineData("227", "22 7/8 in or 2 ft 2 7/8 in")] // the same book: "227" = 22 7/8 in
    [InlineData("54", "5 4/8 in or 54 in")]
    [InlineData("5", "bare number")]
    [InlineData("5.5", "bare number")]
    [InlineData("5-4-6-2", "a group too many")]
    [InlineData("5-4-", "breaks off")]
    [InlineData("5-4-6 1/8", "1/4, 1/2 or 3/4")]
    [InlineData("0-0-0-", "less than nothing")]
    [InlineData("5-4.5-6", "not a length")]
    [InlineData("", "empty")]
    public void RefusedInFeetInchesEighths(string text, string reason)
    {
        Assert.Contains(reason, LengthNotation.Read(text, Eighths).Fault);
        Assert.Contains(reason, LengthNotation.ReadCell(text, Eighths).Fault);
    }

    [Theory]
    [InlineData("1,5", "comma")]
    [InlineData("1,200 mm", "comma")]
    [InlineData("9 yd", "\"yd\", which is not a unit")]
    [InlineData("9 MM", "not a unit")]
    [InlineData("NaN", "not a number")]
    [InlineData("-inf", "not a number")]
    [InlineData("Infinity", "not a number")]
    [InlineData("abc", "not a unit")]
    [InlineData("1e3", "exponent")]
    [InlineData("3/8", "without a unit")]
    [InlineData("2 1/2", "without a unit")]
    [InlineData("1/2 mm", "write decimals")]
    [InlineData("3/7 in", "no rule shows")]
    [InlineData("1/0 in", "no rule shows")]
    [InlineData("0/8 in", "fraction of nothing")]
    [InlineData("2 9/8 in", "less than 1")]
    [InlineData("5' 12\"", "12 inches or more")]
    [InlineData("5' 4", "without their mark")]
    [InlineData("5.5' 4\"", "not a length")]
    [InlineData("5+", "only to feet-inches-eighths")]
    [InlineData("1 200", "more than one way")]
    [InlineData("--5", "not a length")]
    [InlineData("-", "no number")]
    [InlineData("mm", "no number")]
    [InlineData("5 mm 2\"", "mixes")]
    [InlineData("5 #", "\"#\"")]
    [InlineData("12345678901234567890", "more digits")]
    [InlineData("2000 m", "more than a kilometre")]
    [InlineData("   ", "empty")]
    public void RefusedInMillimetres(string text, string reason) =>
        Assert.Contains(reason, LengthNotation.Read(text, LengthUnit.Millimetre).Fault);

    [Theory]
    [InlineData("9 mm")]
    [InlineData("5'-4 3/4\"")]
    [InlineData("3/8 in")]
    public void EveryCellOfATableInEighthsIsInThatNotation(string text)
    {
        Assert.True(LengthNotation.Read(text, Eighths).Ok);
        Assert.Contains("every cell", LengthNotation.ReadCell(text, Eighths).Fault);
    }

    [Fact]
    public void NothingTooLongIsScanned() =>
        Assert.False(LengthNotation.Read(new string('-', 1_000_000), Eighths).Ok);

    /// <summary>An empty cell is a table's alone: a board without a length or a reading without a value is none.</summary>
    [Theory]
    [InlineData(LengthUnit.Millimetre)]
    [InlineData(LengthUnit.Inch)]
    [InlineData(Eighths)]
    public void OnlyATableIsOfferedAnEmptyCell(LengthUnit units)
    {
        Assert.Contains(
            "empty cell",
            LengthNotation.AcceptedInCell(units),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain(
            "empty cell",
            LengthNotation.AcceptedInList(units),
            StringComparison.Ordinal
        );
    }
}
