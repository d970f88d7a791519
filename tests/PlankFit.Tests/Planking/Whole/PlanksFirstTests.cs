using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Whole;

/// <summary>Planks are given before what is worked out from them, once, and they are the very planks of the plan.</summary>
public sealed class PlanksFirstTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public void PlanksComeBeforeTheRest()
    {
        Job job = DemoPlans.Of("survey-launch").Job;
        List<BottomPlan> early = [];
        BottomPlan plan = BottomPlanner.Again(null, job, stop: Stop, planks: early.Add).Plan!;
        BottomPlan planks = Assert.Single(early);
        Assert.Equal(plan.PlankLayers.Count(), planks.PlankLayers.Count());
        Assert.All(plan.Layers.Zip(planks.Layers), l => Assert.Same(l.First, l.Second));
        Assert.NotNull(plan.Timber);
        Assert.Null(planks.Timber);
        Assert.Null(planks.Keel);
        // Of the same job nothing is laid again, and they come all the same.
        BottomPlan again = BottomPlanner.Again(plan, job, stop: Stop, planks: early.Add).Plan!;
        Assert.Equal(2, early.Count);
        Assert.Same(again.Planked.Layers[0], early[1].Planked.Layers[0]);
    }

    /// <summary>Where a job has faults there are none to give.</summary>
    [Fact]
    public void FaultsGiveNone()
    {
        using var folder = new TempFolder();
        string path = OneLayerTender.In(folder, "");
        File.WriteAllText(
            path,
            File.ReadAllText(path)
                .Replace("width = 100", "width = 100\nmaster = 90000", StringComparison.Ordinal)
        );
        Job? job = JobReader.Read(path).Job;
        Assert.NotNull(job);
        List<BottomPlan> early = [];
        Assert.Null(BottomPlanner.Again(null, job, stop: Stop, planks: early.Add).Plan);
        Assert.Empty(early);
    }
}
