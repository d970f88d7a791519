using System.Globalization;
using CsCheck;
using PlankFit.Draughting.Text;

namespace PlankFit.Tests.Export;

public class NumbersTests
{
    [Theory]
    [InlineData(1.5, 3, "1.5")]
    [InlineData(1, 3, "1")]
    [InlineData(100, 0, "100")]
    [InlineData(100, 4, "100")]
    [InlineData(0.00049, 3, "0")]
    [InlineData(-0.00049, 3, "0")]
    [InlineData(-0.0, 0, "0")]
    [InlineData(-1e-9, 6, "0")]
    [InlineData(-0.5, 1, "-0.5")]
    [InlineData(1234567.8901, 2, "1234567.89")]
    [InlineData(-20, 0, "-20")]
    public void ANumberIsWrittenPlainly(double value, int decimals, string expected) =>
        Assert.Equal(expected, Numbers.Text(value, decimals));

    [Theory]
    [InlineData(double.NaN, "NaN")]
    [InlineData(double.PositiveInfinity, "Infinity")]
    [InlineData(double.NegativeInfinity, "-Infinity")]
    [InlineData(1e300, "1E+300")]
    public void WhatIsNoNumberIsRefusedByName(double width, string shown)
    {
        ArgumentOutOfRangeException refused = Assert.Throws<ArgumentOutOfRangeException>(() =>
            Numbers.Text(width, 3)
        );
        Assert.Contains($"width is {shown}", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ACommaCultureChangesNothing()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("de-DE");
            Assert.Equal("1234.5", Numbers.Text(1234.5, 3));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void WhatIsReadBackIsWithinHalfOfTheLastDecimal() =>
        Gen.Select(Gen.Double[-1e6, 1e6], Gen.Int[0, 9])
            .Sample(
                (value, decimals) =>
                {
                    string text = Numbers.Text(value, decimals);
                    double back = double.Parse(text, CultureInfo.InvariantCulture);
                    double half = 0.5 * Math.Pow(10, -decimals);
                    Assert.InRange(back, value - half - 1e-9, value + half + 1e-9);
                    Assert.False(text is "-0" || (text.Contains('.') && text.EndsWith('0')), text);
                }
            );
}
