using PlankFit.Export.Fastenings;
using PlankFit.Export.Keel;
using PlankFit.Export.Shown;
using PlankFit.Export.Timber;
using PlankFit.Export.Trust;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Whole;

/// <summary>What the features of a plan add to what is shown of its planks: the one list of them, in the order in which they are shown.</summary>
public static class OnPlanks
{
    public static PlanShown Of(BottomPlan plan) => new(plan) { Added = [.. Added(plan)] };

    private static IEnumerable<IOnPlanks> Added(BottomPlan plan)
    {
        if (plan.Keel is { } keel)
        {
            yield return new KeelOnPlanks(keel);
        }

        if (plan.JobTimber is not null)
        {
            yield return new TimberOnPlanks(plan);
        }

        if (plan.Fastenings is { } fastenings)
        {
            yield return new FasteningsOnPlanks(fastenings, plan.Job.Units)
            {
                Asked = plan.Job.Fastenings,
            };
        }

        if (plan.Trust is { } trust)
        {
            yield return new TrustOnPlanks(plan, trust);
        }
    }
}
