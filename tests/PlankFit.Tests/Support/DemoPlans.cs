using System.Collections.Concurrent;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;

namespace PlankFit.Tests.Support;

/// <summary>The demo hulls planned, once a run of the tests.</summary>
internal static class DemoPlans
{
    private static readonly ConcurrentDictionary<string, Lazy<BottomPlan>> Plans = new();

    public static BottomPlan Of(string hull) =>
        Plans.GetOrAdd(hull, h => new Lazy<BottomPlan>(() => Plan(h))).Value;

    private static BottomPlan Plan(string hull)
    {
        ReadResult read = JobReader.Read(Path.Combine(DemoTables.Folder(hull), "job.toml"));
        Assert.NotNull(read.Job);
        PlanResult planned = BottomPlanner.Plan(read.Job, null, CancellationToken.None);
        Assert.NotNull(planned.Plan);
        return planned.Plan;
    }
}
