using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Taping;

namespace PlankFit.Planking.Whole;

/// <summary>A plan, or the faults that stand in its way; findings of both.</summary>
public sealed record PlanResult(BottomPlan? Plan, ImmutableArray<Finding> Findings);

/// <summary>The main job: from a job to every plank of every layer, both sides.</summary>
public static class BottomPlanner
{
    /// <summary>Plans the bottom. All faults of the job come back at once, before anything is laid; what shows itself only when lines are followed comes by itself. Faults of the job come back as findings; only a stop request is an exception.</summary>
    public static PlanResult Plan(
        Job job,
        IProgress<PlanProgress>? progress = null,
        CancellationToken stop = default
    ) => Plan(job, null, progress, stop);

    /// <summary>
    /// Plans the bottom of a job that was changed: what would be worked out from the same as in the plan before is taken over from it, planks layer by layer, then part
    /// by part. The plan is the one that <see cref="Plan(Job, IProgress{PlanProgress}?, CancellationToken)"/> gives of the job.
    /// </summary>
    /// <param name="before">Null where there is none.</param>
    /// <param name="planks">Given the planks as soon as they are laid, without the parts that are worked out from them, for who has nothing else to look at yet; not called where there are other panels, whose planks come later.</param>
    public static PlanResult Again(
        BottomPlan? before,
        Job job,
        IProgress<PlanProgress>? progress = null,
        CancellationToken stop = default,
        Action<BottomPlan>? planks = null
    ) => Plan(job, before, progress, stop, planks);

    private static PlanResult Plan(
        Job job,
        BottomPlan? before,
        IProgress<PlanProgress>? progress,
        CancellationToken stop,
        Action<BottomPlan>? planks = null
    )
    {
        // What was laid of the same before had none.
        bool laidBefore =
            before?.Planked.Workings is { } made
            && SameValue.Are(made.Asked, OtherPanels.Apart(job))
            && before.Others.Length == job.Panels.Length;
        if (JobChecks.Of(job, laidBefore) is { IsEmpty: false } faults)
        {
            return new(null, [.. faults, .. OfSoundLayers(job, faults, stop)]);
        }

        return Laid(job, before, progress, stop, planks);
    }

    /// <summary>What shows itself only when layers are laid, of those within the first that has a fault already.</summary>
    private static IEnumerable<Finding> OfSoundLayers(
        Job job,
        ImmutableArray<Finding> faults,
        CancellationToken stop
    ) =>
        SoundLayers.Of(job.Planking, faults) is { } sound
            ? Laid(new(sound), null, null, stop)
                .Findings.Where(f =>
                    f.Severity == Severity.Error
                    && faults.All(told => (told.Where, told.Message) != (f.Where, f.Message))
                )
            : [];

    private static PlanResult Laid(
        Job job,
        BottomPlan? before,
        IProgress<PlanProgress>? progress,
        CancellationToken stop,
        Action<BottomPlan>? planks = null
    )
    {
        try
        {
            (PlankingJob asTaped, TapedHull? taped) = TapedPlanner.Of(
                job.Planking,
                OtherPanels.BottomIsBare(job) ? null : job.Trust,
                stop
            );
            job = job with { Planking = asTaped };
            BottomPlan bottom = OtherPanels.BottomIsBare(job)
                ? OtherPanels.Bare(job)
                : Bottom(job, taped, before, progress, stop, job.Panels.IsEmpty ? planks : null);
            BottomPlan plan = OtherPanels.With(bottom, job, before, progress, stop);
            plan = plan with
            {
                Taped = taped,
                Findings =
                [
                    .. plan.Findings,
                    .. taped?.Findings ?? [],
                    .. taped is null ? [] : TapedFindings.OtherChoices(plan.Planked),
                    .. TapedFindings.OfferedUp(job.AsBuilt, plan.Planked),
                ],
            };
            return new(plan, plan.Findings);
        }
        catch (JobFaultException fault)
        {
            return new(null, [fault.Finding(job.Units)]);
        }
        catch (Exception e) when (LostPlace.Is(e))
        {
            var lost = new LostPlace(HullLoft.Build(job.Offsets, job.Hull.Panel), job.Hull.Panel);
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

    private static BottomPlan Bottom(
        Job job,
        TapedHull? taped,
        BottomPlan? before,
        IProgress<PlanProgress>? progress,
        CancellationToken stop,
        Action<BottomPlan>? planks
    )
    {
        Planked planked = PlankingPlanner.Lay(
            OtherPanels.Apart(job),
            before?.Planked,
            progress,
            stop
        );
        job = job with { Planking = planked.Job };
        planks?.Invoke(new(job, planked));
        return PlanParts.Of(job, planked, before, progress, stop, taped);
    }
}
