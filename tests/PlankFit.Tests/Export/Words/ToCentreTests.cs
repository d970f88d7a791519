using PlankFit.Export.Words;
using PlankFit.Planking.Units;

namespace PlankFit.Tests.Export.Words;

/// <summary>A centre of mass is no surer than the wood: five millimetres, or half an inch.</summary>
public sealed class ToCentreTests
{
    [Theory]
    [InlineData(2742.4, LengthUnit.Millimetre, "2740 mm")]
    [InlineData(2742.6, LengthUnit.Millimetre, "2745 mm")]
    [InlineData(2742.4, LengthUnit.Foot, "9'-0\"")]
    [InlineData(2751, LengthUnit.Foot, "9'-0 1/2\"")]
    [InlineData(2, LengthUnit.Inch, "0\"")]
    [InlineData(-224, LengthUnit.Millimetre, "-225 mm")]
    public void ToFiveMillimetresOrHalfAnInch(double mm, LengthUnit unit, string told) =>
        Assert.Equal(told, PlankWords.ToCentre(mm, unit).Replace('−', '-'));
}
