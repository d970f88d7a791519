using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Planking.Whole;

/// <summary>Whatever is changed in whatever job, planning it again gives what a whole planning gives: there, and back again.</summary>
public sealed class AgainByChanceTests
{
    [Fact]
    public void ThePlanIsThatOfAWholePlanning()
    {
        int kept = 0,
            pairs = LongRuns.Of(4, 240);
        for (int seed = 1; seed <= pairs; seed++)
        {
            using var temp = new TempFolder();
            if (JobReader.Read(ChanceJob.Write(seed, temp.Path)).Job is not { } job)
            {
                continue;
            }

            (Job changed, string what) = ChangedJob.Of(job, new(seed));
            PlanResult one = BottomPlanner.Plan(job, null, TestContext.Current.CancellationToken),
                other = BottomPlanner.Plan(changed, null, TestContext.Current.CancellationToken);
            kept += Held(one, changed, other, $"{seed}: {what}");
            kept += Held(other, job, one, $"{seed}: {what}, taken back");
        }

        Assert.True(kept > 0, "no part of any pair was kept");
    }

    /// <returns>How many layers were taken over.</returns>
    private static int Held(PlanResult before, Job job, PlanResult whole, string what)
    {
        if (before.Plan is not { } plan)
        {
            return 0;
        }

        PlanResult again = BottomPlanner.Again(plan, job);
        string? difference = SamePlan.Difference(whole, again);
        Assert.True(difference is null, $"{what}: {difference}");
        return again.Plan is { } now ? plan.PlankLayers.Intersect(now.PlankLayers).Count() : 0;
    }
}
