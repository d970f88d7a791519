using PlankFit.App.Running;
using PlankFit.Nesting.Sessions;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Planning;

/// <summary>A job planned with all that it asks for, the bottom and where stock is named which piece comes out of which board; and planned again when the job has changed.</summary>
public static class Planner
{
    /// <summary>
    /// The plan of a job that was changed: what would be made from the same as in the plan before is taken over from it, the very same, planks, parts and the plan of
    /// cutting. Who holds a plan asks for the next with it; nothing else is kept anywhere.
    /// </summary>
    /// <param name="stop">Ends the laying of planks with an exception, and the search for boards with the best plan so far.</param>
    /// <param name="previous">Null where there is none, or where there were faults.</param>
    /// <returns>As of <see cref="BottomPlanner"/>: a plan, or the faults that stand in its way.</returns>
    public static PlanResult Again(
        BottomPlan? previous,
        Job job,
        IProgress<PlanProgress> progress,
        Timings timings,
        CancellationToken stop
    )
    {
        PlanResult bottom = Bottom(previous, job, progress, timings, stop);
        if (bottom.Plan is not { } plan)
        {
            return bottom;
        }

        BottomPlan nested = InBoards(plan, previous, progress, timings, stop);
        return new(nested, nested.Findings);
    }

    /// <summary>The first half of it: all but the boards.</summary>
    /// <param name="planks">Given the planks before what is worked out from them; see <see cref="BottomPlanner"/>.</param>
    public static PlanResult Bottom(
        BottomPlan? previous,
        Job job,
        IProgress<PlanProgress> progress,
        Timings timings,
        CancellationToken stop,
        Action<BottomPlan>? planks = null
    ) =>
        timings.Time(
            "work out every plank",
            () => Searched(BottomPlanner.Again(previous, job, progress, stop, planks))
        );

    /// <summary>Gluing with its sessions searched, where the job asks for it.</summary>
    private static PlanResult Searched(PlanResult planned) =>
        planned.Plan is { Glue: { Spec.Crew.Searched: true } glue } plan
            ? planned with
            {
                Plan = plan with
                {
                    Glue = BetterSessions.Of(glue, id => plan.LayerOf(id).Of(id.Side).MasterNumber),
                },
            }
            : planned;

    /// <summary>The second half: where the job names stock, its pieces laid out in the boards.</summary>
    public static BottomPlan InBoards(
        BottomPlan plan,
        BottomPlan? previous,
        IProgress<PlanProgress> progress,
        Timings timings,
        CancellationToken stop
    ) =>
        plan.Job.Nest is { } spec
            ? NestedPlan.Of(plan, spec, previous?.Nest, progress, timings, stop)
            : plan;
}
