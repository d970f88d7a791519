using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;

namespace PlankFit.Planking.Whole;

/// <summary>The panels of a hull besides its bottom: each is laid by itself, as a bottom is, and has the parts of a plan that need no keel.</summary>
internal static class OtherPanels
{
    /// <summary>The bottom's planking without what was measured and sawn of other panels.</summary>
    public static PlankingJob Apart(Job job) =>
        job.AsBuilt.IsEmpty
            ? job.Planking
            : job.Planking with
            {
                AsBuilt = job.AsBuilt.Of(job.Hull.Panel),
            };

    /// <summary>The bottom is not planked, only other panels are.</summary>
    public static bool BottomIsBare(Job job) => job.Layers.IsEmpty && !job.Panels.IsEmpty;

    /// <summary>A bottom without planks: its surface alone.</summary>
    public static BottomPlan Bare(Job job) =>
        new(job, new(Apart(job), HullLoft.Build(job.Offsets, job.Hull.Panel), [], []));

    /// <summary>Another panel's planking with what was sawn of it.</summary>
    public static PlankingJob Apart(Job job, PlankingJob panel) =>
        panel with
        {
            AsBuilt = job.AsBuilt.Of(panel.Hull.Panel),
        };

    /// <summary>The plan with those of the job's other panels, and what was found of them.</summary>
    /// <param name="before">A plan of another job: what would be made from the same of a panel of the same name is taken over from it.</param>
    /// <exception cref="JobFaultException">A panel cannot be laid.</exception>
    public static BottomPlan With(
        BottomPlan bottom,
        Job job,
        BottomPlan? before,
        IProgress<PlanProgress>? progress,
        CancellationToken stop
    )
    {
        bottom = bottom with { OnRecord = job.AsBuilt.Sawn };
        if (job.Panels.IsEmpty)
        {
            return bottom;
        }

        ImmutableArray<BottomPlan> others =
        [
            .. job.Panels.Select(p =>
                Of(
                    job,
                    p,
                    before?.Others.FirstOrDefault(o => o.Job.Hull.Panel.Name == p.Hull.Panel.Name),
                    progress,
                    stop
                )
            ),
        ];
        return bottom with
        {
            Others = others,
            // What is said of a wood is said once.
            Findings =
            [
                .. bottom
                    .Findings.Concat(others.SelectMany(o => o.Findings))
                    .Concat(OfTheBottomOnly(job))
                    .Concat(SharedEdges.Of([bottom, .. others]))
                    .Distinct(),
            ],
        };
    }

    private static BottomPlan Of(
        Job job,
        PlankingJob panel,
        BottomPlan? before,
        IProgress<PlanProgress>? progress,
        CancellationToken stop
    )
    {
        try
        {
            Planked planked = PlankingPlanner.Lay(
                Apart(job, panel),
                before?.Planked,
                progress,
                stop
            );
            Job own = job.OfOtherPanel(planked.Job);
            return PlanParts.Of(own, planked, before, progress, stop);
        }
        catch (Exception e) when (LostPlace.Is(e))
        {
            Panel of = panel.Hull.Panel;
            var lost = new LostPlace(HullLoft.Build(panel.Offsets, of), of);
            throw new JobFaultException(
                "offsets",
                $"the {of.Name} cannot be followed: {lost.Told(e)}; {lost.Remedy(e)}"
            );
        }
    }

    /// <summary>What the job asks for and other panels do not have.</summary>
    private static IEnumerable<Finding> OfTheBottomOnly(Job job)
    {
        string[] asked = [.. job.AskedOfTheBottom];
        string[] names = [.. job.Panels.Select(p => p.Hull.Panel.Name)];
        if (asked.Length > 0)
        {
            yield return new(
                Severity.Note,
                string.Join(", ", names),
                $"{string.Join(", ", asked)} {(asked.Length == 1 ? "is" : "are")} worked out for the bottom only{(BottomIsBare(job) ? ", which has no planks: nothing comes of it" : "")}"
            );
        }

        if (!job.AsBuilt.Girths.IsEmpty)
        {
            yield return new(
                Severity.Warning,
                string.Join(", ", names),
                "girths were measured on the bottom, and its chine is moved by them; other panels are laid to the lines of the table as drawn: tape them before sawing"
            );
        }
    }
}
