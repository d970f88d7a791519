using PlankFit.Export.Fastenings;
using PlankFit.Export.Shown;
using PlankFit.Export.Trust;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Whole;

/// <summary>What the features of a plan add to what is shown of its planks: the one list of them, in the order in which they are shown.</summary>
public static class OnPlanks
{
    public static PlanShown Of(BottomPlan plan) => new(plan) { Added = [.. Added(plan)] };

    private static IEnumerable<IOnPlanks> Added(BottomPlan plan)
    {
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
