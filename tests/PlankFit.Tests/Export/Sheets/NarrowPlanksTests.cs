using PlankFit.Export.Views;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>Views of many narrow planks, most of whose numbers are on leaders: none stands on another lettering, on the views of the demo launch as she comes.</summary>
public sealed class NarrowPlanksTests
{
    [Fact]
    public void NoNumberStandsOnAGirthOrOnAnother()
    {
        BottomPlan plan = BottomPlanner
            .Plan(
                JobReader.Read(Path.Combine(DemoTables.Demo("survey-launch"), "job.toml")).Job!,
                null,
                TestContext.Current.CancellationToken
            )
            .Plan!;
        string[] faults =
        [
            .. plan
                .PlankLayers.SelectMany(l =>
                    new[] { ShellExpansion.Of(plan, l), BottomPlanView.Of(plan, l) }
                )
                .SelectMany(s => SheetCheck.Faults(s)),
        ];
        Assert.Equal([], faults);
    }
}
