using PlankFit.Planking.Findings;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Words;

/// <summary>Planks that follow one another are named by the first and the last of them.</summary>
public sealed class PlankRunsTests
{
    [Theory]
    [InlineData("", "")]
    [InlineData("S1-03", "S1-03")]
    [InlineData("S1-03 S1-04", "S1-03, S1-04")]
    [InlineData("S1-03 S1-04 S1-05 S1-06", "S1-03 to 06")]
    [InlineData("S1-03 S1-04 S1-05 S1-07 P1-03 P1-04 P1-05", "S1-03 to 05, S1-07, P1-03 to 05")]
    [InlineData("S1-A2 S1-A1 S1-00 S1-01", "S1-A2 to 01")]
    [InlineData("S1-03 S2-04 ST1-05", "S1-03, S2-04, ST1-05")]
    [InlineData("S1-05 S1-04 S1-03", "S1-05, S1-04, S1-03")]
    public void ARunIsItsEnds(string planks, string said) =>
        Assert.Equal(
            said,
            PlankRuns.Words(
                planks.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Named.Plank)
            )
        );
}
