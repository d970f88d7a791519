using System.Collections.Immutable;
using PlankFit.App.Looking;
using PlankFit.App.Noting;
using PlankFit.App.Running;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Glue;
using PlankFit.Reading.Jobs;

namespace PlankFit.App.Planning;

/// <summary>A job read and planned, with all that was found on the way; or the report that says why not.</summary>
internal sealed record PlannedJob(BottomPlan? Plan, RunReport? Faults)
{
    /// <summary>What was said of the table's fairness; null where the job could not be read.</summary>
    public FairnessLook? Look { get; private init; }

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
        return From(jobPath, read, null, progress, timings, stop);
    }

    /// <summary>The same of a job that has been read.</summary>
    /// <param name="jobPath">Beside which lies what is glued already.</param>
    /// <param name="planks">Given the planks before what is worked out from them.</param>
    /// <param name="before">The same job before it was changed; null where there is none.</param>
    public static PlannedJob From(
        string jobPath,
        ReadResult read,
        PlannedJob? before,
        IProgress<PlanProgress> progress,
        Timings timings,
        CancellationToken stop,
        Action<BottomPlan>? planks = null
    )
    {
        if (read.Job is not { } asRead)
        {
            return new(null, RunReport.Faults(read.Findings));
        }

        (Job job, ImmutableArray<Finding> ofProgress) = ProgressBeside.Of(asRead, jobPath);
        if (ofProgress.Any(f => f.Severity == Severity.Error))
        {
            return new(null, RunReport.Faults([.. read.Findings, .. ofProgress]));
        }

        // Judged beside the work, since planks can be laid to a table that is not fair, and mostly it is.
        Task<FairnessLook> judged = Task.Run(
            () =>
                timings.Time(
                    "  judge the fairness of the table",
                    () =>
                        FairnessLook.Again(
                            before?.Look,
                            LookedAt.Of(
                                job,
                                read.OffsetsText!,
                                Path.GetFileName(read.OffsetsPath!)
                            ),
                            job
                        )
                ),
            CancellationToken.None
        );
        PlanResult planned = Planner.Bottom(before?.Plan, job, progress, timings, stop, planks);
        FairnessLook look = judged.GetAwaiter().GetResult();
        ImmutableArray<Finding> findings = Finding.CausesRaised([
            .. look.Findings,
            .. read.Findings,
            .. ofProgress,
            .. read.Placed(planned.Findings),
            .. read.Placed([.. JobQuestions.Of(job)]),
        ]);
        PlannedJob made =
            planned.Plan is { } plan && look.Findings.All(f => f.Severity != Severity.Error)
                ? new(plan.WithMargin(look.Margin) with { Findings = findings }, null)
                : new(
                    null,
                    RunReport.Faults(
                        // Of what is laid to a faulty table only the faults are told.
                        planned.Plan
                            is null
                            ? findings
                            : [.. look.Findings, .. read.Findings]
                    )
                );
        return made with { Look = look };
    }

    /// <summary>Whether it was said of the work that is done already.</summary>
    public static bool IsOfProgress(Finding finding) =>
        finding.Where is ProgressText.UsualName or ProgressJournal.FileName;
}
