using PlankFit.Export.Summary;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Words;

/// <summary>Rules that shape the work are said at the end of it, those too that the job does not speak of.</summary>
public sealed class WhatShapesTests
{
    private static string[] Said(BottomPlan plan) =>
        [.. PlanSummary.Of(plan).Lines(LengthUnit.Millimetre)];

    [Fact]
    public void EndsAreSaidAsTheyAreCut()
    {
        Assert.Contains(
            Said(DemoPlans.Of("survey-launch")),
            l =>
                l.StartsWith(
                    "Ends of the bottom: fit at keel; left long by ",
                    StringComparison.Ordinal
                ) && l.Contains("where no [[ends.zone]] says otherwise", StringComparison.Ordinal)
        );
        Assert.Contains(
            "Ends of the bottom: fit at keel; left long by 25 mm at chine, transom, stem; as the program has it where [ends] says nothing.",
            Said(
                DemoPlans.Of("survey-launch") with
                {
                    Job = DemoPlans.Of("survey-launch").Job with
                    {
                        Ends = PlankFit.Planking.Layers.EndRules.Default,
                    },
                }
            )
        );
    }

    [Fact]
    public void JointsAreSaidWithWhatTheyKeepAndWhoseRulesTheyAre() =>
        Assert.Contains(
            Said(DemoPlans.Of("survey-launch")),
            l =>
                l.StartsWith("Joints of layer 2 keep next plank, ", StringComparison.Ordinal)
                && l.Contains(": 2 of them come with the program", StringComparison.Ordinal)
        );

    [Fact]
    public void PullDownsAreCounted()
    {
        BottomPlan plan = DemoPlans.Of("survey-launch");
        int points = plan.Fastenings!.ByPlank.Values.Sum(p =>
            p.Points.Count(f => f.Use == PlankFit.Planking.Fastenings.FasteningUse.PullDown)
        );
        Assert.True(points > 1000);
        Assert.Contains(
            plan.Findings,
            f => f.Message.Contains($"comes to {points} points", StringComparison.Ordinal)
        );
    }
}
