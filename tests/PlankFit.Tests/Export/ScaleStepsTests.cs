using PlankFit.Export.Lists;
using PlankFit.Planking.Units;

namespace PlankFit.Tests.Export;

/// <summary>Steps of a scale that are easily said, and no less than what must fit in them.</summary>
public sealed class ScaleStepsTests
{
    [Theory]
    [InlineData(0.35, LengthUnit.Millimetre, 0.5)]
    [InlineData(0.5, LengthUnit.Millimetre, 0.5)]
    [InlineData(0.501, LengthUnit.Millimetre, 1)]
    [InlineData(0.06, LengthUnit.Centimetre, 0.1)]
    [InlineData(0, LengthUnit.Millimetre, 0.001)]
    [InlineData(0, LengthUnit.Foot, 25.4 / 32)]
    [InlineData(25.4 / 32, LengthUnit.Foot, 25.4 / 32)]
    [InlineData(0.8, LengthUnit.Inch, 25.4 / 16)]
    [InlineData(10, LengthUnit.FeetInchesEighths, 12.7)]
    public void TheLeastThatIsNoLess(double leastMm, LengthUnit unit, double stepMm) =>
        Assert.Equal(stepMm, ScaleSteps.Of(leastMm, unit), 1e-9);

    [Theory]
    [InlineData(1, 0.5, LengthUnit.Millimetre, "1.0 mm")]
    [InlineData(0.02, 0.02, LengthUnit.Millimetre, "0.02 mm")]
    [InlineData(10, 5, LengthUnit.Metre, "10 mm")]
    [InlineData(25.4 / 16, 25.4 / 32, LengthUnit.Foot, "1/16\"")]
    [InlineData(0, 25.4 / 32, LengthUnit.Inch, "0\"")]
    public void SaidAsARuleHasIt(double mm, double stepMm, LengthUnit unit, string words) =>
        Assert.Equal(words, ScaleSteps.Text(mm, stepMm, unit));
}
