using PlankFit.Planking.Units;

namespace PlankFit.Tests.Planking.Units;

/// <summary>Expected texts worked by hand: 1 in = 25.4 mm, 1/32 in = 0.79375 mm, 1 ft = 304.8 mm.</summary>
public class LengthTextTests
{
    /// <summary>0.04 in is 1.016 mm: a cloth's thickness as given, and as it comes to, are not told alike where they differ.</summary>
    [Theory]
    [InlineData(1.016, LengthUnit.Foot, "40 thousandths of an inch")]
    [InlineData(0.94, LengthUnit.Foot, "37 thousandths of an inch")]
    [InlineData(0.94, LengthUnit.Metre, "0.94 mm")]
    public void WhatNoRuleMeasuresIsToldFiner(double mm, LengthUnit unit, string told) =>
        Assert.Equal(told, LengthText.Thin(mm, unit));

    [Theory]
    [InlineData(1835.74, "1835.5 mm")]
    [InlineData(1835.75, "1836 mm")]
    [InlineData(0, "0 mm")]
    [InlineData(-0.2, "0 mm")]
    [InlineData(-0.25, "-0.5 mm")]
    [InlineData(-1200.6, "-1200.5 mm")]
    public void MillimetresGoToTheNearestHalf(double mm, string text) =>
        Assert.Equal(text, LengthText.ForPaper(mm, LengthUnit.Millimetre));

    [Theory]
    [InlineData(1835.5, "1835.5 mm")]
    [InlineData(1835.5009, "1835.5 mm")]
    [InlineData(1835.502, "1836 mm")]
    [InlineData(1835.01, "1835.5 mm")]
    [InlineData(-0.3, "0 mm")]
    public void ALengthToCutIsNeverWrittenShort(double mm, string text) =>
        Assert.Equal(text, LengthText.ForPaper(mm, LengthUnit.Millimetre, RoundTo.Up));

    [Theory]
    [InlineData(LengthUnit.Centimetre, 1835.74, "183.55 cm")]
    [InlineData(LengthUnit.Centimetre, 1800, "180 cm")]
    [InlineData(LengthUnit.Metre, 1835.74, "1.8355 m")]
    [InlineData(LengthUnit.Metre, 600, "0.6 m")]
    public void CentimetresAndMetresKeepHalfAMillimetre(LengthUnit unit, double mm, string text) =>
        Assert.Equal(text, LengthText.ForPaper(mm, unit));

    [Theory]
    [InlineData(12.375, "12 3/8\"")]
    [InlineData(0.5, "1/2\"")]
    [InlineData(0.03125, "1/32\"")]
    [InlineData(0.015, "0\"")]
    [InlineData(-0.015, "0\"")]
    [InlineData(11.99, "12\"")]
    [InlineData(-2.5, "\u22122 1/2\"")]
    [InlineData(7.96875, "7 31/32\"")]
    public void InchesAreFractionsInLowestTerms(double inches, string text) =>
        Assert.Equal(text, LengthText.ForPaper(inches * 25.4, LengthUnit.Inch));

    [Theory]
    [InlineData(64.75, "5'-4 3/4\"")]
    [InlineData(11.99, "1'-0\"")]
    [InlineData(0, "0\"")]
    [InlineData(0.3125, "5/16\"")]
    [InlineData(-0.3125, "\u22125/16\"")]
    [InlineData(11.96875, "11 31/32\"")]
    [InlineData(59.3125, "4'-11 5/16\"")]
    [InlineData(84.8125, "7'-0 13/16\"")]
    [InlineData(-64.75, "\u22125'-4 3/4\"")]
    public void FeetAreFeetAndInches(double inches, string text) =>
        Assert.Equal(text, LengthText.ForPaper(inches * 25.4, LengthUnit.Foot));

    [Theory]
    [InlineData(64.75, "5-4-6")]
    [InlineData(64.8125, "5-4-6+")] // 5 ft 4 13/16 in: the formula's own example
    [InlineData(64.78125, "5-4-6 1/4")]
    [InlineData(64.84375, "5-4-6 3/4")]
    [InlineData(11.99, "1-0-0")] // 11 31/32 and more carries through eighths and inches
    [InlineData(11.96875, "0-11-7 3/4")]
    [InlineData(0, "0-0-0")]
    [InlineData(-3.5, "-0-3-4")]
    public void FeetInchesEighthsCarry(double inches, string text) =>
        Assert.Equal(text, LengthText.FeetInchesEighths(inches * 25.4));

    /// <summary>Feet-inches-eighths is for tables: what a job in it shows is feet and inches.</summary>
    /// <summary>25 mm are 31.496 marks of 1/32 in: 31/32 is the nearer, and less than is asked; a least distance is an inch, and what is kept of one 31/32.</summary>
    [Theory]
    [InlineData(25, RoundTo.Nearest, "31/32\"")]
    [InlineData(25, RoundTo.Up, "1\"")]
    [InlineData(25, RoundTo.Down, "31/32\"")]
    [InlineData(25.4, RoundTo.Down, "1\"")]
    [InlineData(25.4, RoundTo.Up, "1\"")]
    [InlineData(50.5, RoundTo.Down, "1 31/32\"")]
    public void LeastDistancesAreNeverToldLess(double mm, RoundTo mode, string text) =>
        Assert.Equal(text, LengthText.ForPaper(mm, LengthUnit.FeetInchesEighths, mode));

    [Fact]
    public void AJobInEighthsShowsFeetAndInches() =>
        Assert.Equal(
            "5'-4 13/16\"",
            LengthText.ForPaper(64.8125 * 25.4, LengthUnit.FeetInchesEighths)
        );

    [Fact]
    public void ElevenAndThirtyoneThirtysecondsAndAHairRoundsUpToAFoot() =>
        Assert.Equal(
            "1'-0\"",
            LengthText.ForPaper(11.96875 * 25.4 + 0.01, LengthUnit.FeetInchesEighths, RoundTo.Up)
        );

    [Theory]
    [InlineData(1835.74, LengthUnit.Millimetre, "1835.7 mm")]
    [InlineData(600, LengthUnit.Millimetre, "600 mm")]
    [InlineData(-0.04, LengthUnit.Millimetre, "0 mm")]
    [InlineData(1835.74, LengthUnit.Metre, "1.8357 m")]
    [InlineData(304.79999, LengthUnit.Inch, "12\"")]
    [InlineData(304.79999, LengthUnit.Foot, "1'-0\"")]
    [InlineData(1644.65, LengthUnit.FeetInchesEighths, "5'-4 3/4\"")]
    [InlineData(-1644.65, LengthUnit.FeetInchesEighths, "\u22125'-4 3/4\"")]
    public void ExactFormForLists(double mm, LengthUnit unit, string text) =>
        Assert.Equal(text, LengthText.FormatExact(mm, unit));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e12)]
    public void WhatIsNoLengthIsTheCallersFault(double mm)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            LengthText.ForPaper(mm, LengthUnit.Millimetre)
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            LengthText.FormatExact(mm, LengthUnit.FeetInchesEighths)
        );
    }

    [Theory]
    [InlineData(46.24, "46°", "46.2°")]
    [InlineData(46.25, "46.5°", "46.3°")]
    [InlineData(-0.04, "0°", "0°")]
    [InlineData(-17.3, "-17.5°", "-17.3°")]
    public void Angles(double degrees, string paper, string exact)
    {
        Assert.Equal(paper, AngleText.ForPaper(degrees));
        Assert.Equal(exact, AngleText.Exact(degrees));
    }

    [Fact]
    public void PaperSaysItsTolerance()
    {
        Assert.Contains("0.5 mm", LengthText.PaperToleranceText(LengthUnit.Metre));
        Assert.Contains("1/32\"", LengthText.PaperToleranceText(LengthUnit.FeetInchesEighths));
    }

    /// <summary>What rounds to nothing is not told as nought: at the place itself, or as under the least that is shown. By chance, in all units.</summary>
    [Fact]
    public void NothingIsToldAsNoughtThatIsThere()
    {
        var random = new Random(5);
        for (int i = 0; i < 2000; i++)
        {
            double mm = Math.Pow(10, (random.NextDouble() * 6) - 2.9);
            foreach (LengthUnit unit in Enum.GetValues<LengthUnit>())
            {
                string fine = LengthText.Fine(mm, unit),
                    from = LengthText.From(mm, unit, "its end");
                Assert.DoesNotMatch("^0( |\"|$)", fine);
                Assert.Equal(
                    LengthText.ForPaper(mm, unit) == LengthText.ForPaper(0, unit)
                        ? "at its end"
                        : LengthText.ForPaper(mm, unit) + " from its end",
                    from
                );
            }
        }

        Assert.Equal("at its end", LengthText.From(0.2, LengthUnit.Foot, "its end"));
        Assert.Equal("0.5 mm from its end", LengthText.From(0.3, LengthUnit.Millimetre, "its end"));
        Assert.Equal("under 0.1 mm", LengthText.Fine(0.01, LengthUnit.Millimetre));
        Assert.Equal("under 0.01 cm", LengthText.Fine(0.01, LengthUnit.Centimetre));
        Assert.Equal("under 0.0001 m", LengthText.Fine(0.01, LengthUnit.Metre));
    }

    [Theory]
    [InlineData(0.1, LengthUnit.Foot, "under 1/32\"")]
    [InlineData(0.1, LengthUnit.Millimetre, "at most 0.1 mm")]
    [InlineData(3.2, LengthUnit.Inch, "at most 1/8\"")]
    [InlineData(0, LengthUnit.Inch, "at most 0\"")]
    public void ABoundIsToldOnce(double mm, LengthUnit unit, string told) =>
        Assert.Equal(told, LengthText.FineMost(mm, unit));

    /// <summary>What glue is trusted with is never told as more than it is, nor as nothing: beside an opening of 1/32 in it reads as less.</summary>
    [Theory]
    [InlineData(0.5, LengthUnit.Foot, "under 1/32\"")]
    [InlineData(0.5, LengthUnit.Inch, "under 1/32\"")]
    [InlineData(1, LengthUnit.Foot, "1/32\"")]
    [InlineData(0, LengthUnit.Foot, "0\"")]
    [InlineData(0.5, LengthUnit.Millimetre, "0.5 mm")]
    [InlineData(0.04, LengthUnit.Millimetre, "0.04 mm")]
    public void AGapIsNeverToldAsMoreNorAsNothing(double mm, LengthUnit unit, string told) =>
        Assert.Equal(told, LengthText.Gap(mm, unit));
}
