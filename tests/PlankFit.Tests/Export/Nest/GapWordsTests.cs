using PlankFit.Export.Stock;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;

namespace PlankFit.Tests.Export.Nest;

/// <summary>What is said of how good a plan is must be so: of the least possible, which the bound is, and never less than it is.</summary>
public sealed class GapWordsTests
{
    /// <summary>110 of 100 is 10 % above it, not 9.1 %; 100.04 is not the least, and 0.1 % above it at the most.</summary>
    [Theory]
    [InlineData(
        110,
        100,
        "proved to be no more than 10.0 % above the least possible in rows, which is 100.00 or more"
    )]
    [InlineData(
        100.04,
        100,
        "proved to be no more than 0.1 % above the least possible in rows, which is 100.00 or more"
    )]
    [InlineData(
        101.23,
        100,
        "proved to be no more than 1.3 % above the least possible in rows, which is 100.00 or more"
    )]
    [InlineData(100, 100, "proved to be the least possible in rows (100.00)")]
    [InlineData(100, 0, "how near it is to the least possible was not worked out")]
    public void Gaps(double value, double bound, string told) =>
        Assert.Equal(
            told,
            NestWords.Gap(
                NestSpec.Usual with
                {
                    Objective = NestObjective.Cost,
                },
                new("9 mm", [], value, bound, null, null, 0) { Measure = NestMeasure.Cost },
                LengthUnit.Millimetre
            )
        );
}
