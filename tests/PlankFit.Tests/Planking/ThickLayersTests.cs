using PlankFit.Planking.Findings;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Reading.Names;

namespace PlankFit.Tests.Planking;

/// <summary>Layers too thick for the hull: a finding that names a plank, never an exception. Found by spoiled jobs.</summary>
public sealed class ThickLayersTests
{
    [Theory]
    [InlineData(90)]
    [InlineData(60)]
    [InlineData(200)]
    public void ASkinOfATenthOfAMetreIsPlannedOrRefused(double thickness)
    {
        Job job = EveryName
            .Read(
                EveryName
                    .Job.Replace("width = 150", "width = 300")
                    .Replace(
                        "name = \"inner\"\nthickness = 9",
                        FormattableString.Invariant($"name = \"inner\"\nthickness = {thickness}")
                    )
            )
            .Job!;
        PlanResult result = BottomPlanner.Plan(job, stop: TestContext.Current.CancellationToken);
        Assert.True(
            result.Plan is not null || result.Findings.Any(f => f.Severity == Severity.Error)
        );
    }
}
