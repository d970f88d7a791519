using System.Globalization;
using System.Text;
using CsCheck;
using PlankFit.Export.Tables;

namespace PlankFit.Tests.Export.Tables;

public sealed class FixedPointTests
{
    [Theory]
    [InlineData(0, 4, "0.0000")]
    [InlineData(-0.00004, 4, "0.0000")]
    [InlineData(-0.00006, 4, "-0.0001")]
    [InlineData(0.5, 1, "0.5")]
    [InlineData(-12.25, 1, "-12.3")]
    [InlineData(1835.81, 4, "1835.8100")]
    [InlineData(-999999999.5, 4, "-999999999.5000")]
    [InlineData(1e9, 6, "1000000000.000000")]
    public void Writes(double value, int decimals, string text) =>
        Assert.Equal(text, Text(value, decimals));

    [Fact]
    public void MinusNoughtHasNoSign() => Assert.Equal("0.0000", Text(double.NegativeZero, 4));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(1.1e9)]
    public void RefusesWhatIsNoLength(double value) =>
        Assert.Throws<NotFiniteNumberException>(() => Text(value, 4));

    [Theory]
    [InlineData("150.0000", "150")]
    [InlineData("46.2000", "46.2")]
    [InlineData("0.0000", "0")]
    [InlineData("100.0001", "100.0001")]
    public void Trims(string text, string trimmed) =>
        Assert.Equal(trimmed, text[..FixedPoint.Trimmed(Encoding.ASCII.GetBytes(text))]);

    [Fact]
    public void EveryNumberReadsBackWithinHalfItsLastPlace() =>
        Gen.Double[-1e6, 1e6]
            .Sample(value =>
                Math.Abs(double.Parse(Text(value, 4), CultureInfo.InvariantCulture) - value)
                <= 0.500001e-4
            );

    private static string Text(double value, int decimals)
    {
        byte[] text = new byte[FixedPoint.LongestText];
        return Encoding.ASCII.GetString(text, 0, FixedPoint.Write(value, decimals, text));
    }
}
