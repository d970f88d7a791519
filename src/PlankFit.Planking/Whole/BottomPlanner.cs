using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Laying;

namespace PlankFit.Planking.Whole;

/// <summary>A plan, or the faults that stand in its way; findings of both.</summary>
public sealed record PlanResult(BottomPlan? Plan, ImmutableArray<Finding> Findings);

/// <summary>The main job: from a job to every plank of every layer, both sides.</summary>
public static class BottomPlanner
{
    /// <summary>Plans the bottom. Faults of the job come back as findings; only a stop request is an exception.</summary>
    public static PlanResult Plan(
        Job job,
        IProgress<PlanProgress>? progress = null,
        CancellationToken stop = default
    )
    {
        try
        {
            Planked planked = PlankingPlanner.Lay(job.Planking, progress, stop);
            BottomPlan plan = PlanParts.Of(job with { Planking = planked.Job }, planked, stop);
            return new(plan, plan.Findings);
        }
        catch (JobFaultException fault)
        {
            return new(null, [fault.Finding]);
        }
        catch (Exception e) when (LostPlace.Is(e))
        {
            var lost = new LostPlace(HullLoft.Build(job.Offsets, job.Hull), job.Hull);
            return new(
                null,
                [
                    new(
                        Severity.Error,
                        "offsets",
                        $"the bottom cannot be followed: {lost.Told(e)}; {lost.Remedy(e)}"
                    ),
                ]
            );
        }
    }
}
