using MathNet.Numerics.LinearAlgebra;
using PlankFit.Export.Taping;
using PlankFit.Planking.Adjusting;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Words;

/// <summary>What is sure enough is to be sawn now, but for readings that do not go with the table: these are settled first.</summary>
public sealed class SawNowTests
{
    private static readonly TapeAdvice Sure = new(
        [],
        [],
        [new(Named.Plank("S1-17"), 1, 1, null, false, true)],
        []
    );

    [Theory]
    [InlineData(3.9, "Saw now: S1-17.")]
    [InlineData(6.1, "Saw nothing before that is settled; then: S1-17.")]
    public void ReadingsThatDoNotGoWithTheTableAreSettledFirst(double misfit, string last)
    {
        Estimate none = new(Vector<double>.Build.Dense(2), Matrix<double>.Build.Dense(2, 2));
        BottomPlan plan = DemoPlans.Of("survey-launch") with
        {
            Taped = new([], [], none, none, new(2, misfit, 6, 1), null),
        };
        Assert.Equal(last, TapedWords.SawNow(plan, Sure)[^1]);
    }
}
