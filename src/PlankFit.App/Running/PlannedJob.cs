using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;

namespace PlankFit.App.Running;

/// <summary>A job read and planned, with all that was found on the way; or the report that says why not.</summary>
internal sealed record PlannedJob(BottomPlan? Plan, RunReport? Faults)
{
    public static PlannedJob From(
        string jobPath,
        IProgress<PlanProgress> progress,
        Timings timings,
        CancellationToken stop
    )
    {
        ReadResult read = timings.Time(
            "read the job and its offsets",
            () => JobReader.Read(jobPath)
        );
        if (read.Job is not { } job)
        {
            return new(null, RunReport.Faults(read.Findings));
        }

        PlanResult planned = timings.Time(
            "work out every plank",
            () => BottomPlanner.Plan(job, progress, stop)
        );
        ImmutableArray<Finding> findings = [.. read.Findings, .. read.Placed(planned.Findings)];
        return planned.Plan is { } plan
            ? new(plan with { Findings = findings }, null)
            : new(null, RunReport.Faults(findings));
    }
}
