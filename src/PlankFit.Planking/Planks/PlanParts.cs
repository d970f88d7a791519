using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>What is worked out from a bottom once its planks are laid, part by part; each may use those before it.</summary>
internal static class PlanParts
{
    public static BottomPlan AddedTo(BottomPlan plan, CancellationToken stop)
    {
        plan = CutPlanks.KeptIn(plan);
        plan = plan with { Keel = KeelPlanner.Of(plan, stop) };
        plan = plan with { SettingUp = SettingUpPlanner.Of(plan, stop) };
        plan = plan with { Behind = BehindPlanner.Of(plan, stop) };
        plan = plan with { Joints = JointPlanner.Of(plan, stop) };
        plan = plan with { Fastenings = FasteningPlanner.Of(plan, stop) };
        plan = plan with { Timber = TimberPlanner.Of(plan, stop) };
        plan = plan with { Standing = StandingPlanner.Of(plan, stop) };
        ImmutableArray<Finding> found =
        [
            .. plan.Findings,
            .. plan.Keel?.Findings ?? [],
            .. plan.SettingUp?.Findings ?? [],
            .. plan.Behind?.Findings ?? [],
            .. plan.Joints?.Findings ?? [],
            .. plan.Fastenings?.Findings ?? [],
            .. plan.Timber?.Findings ?? [],
            .. plan.Standing?.Findings ?? [],
        ];
        return plan with { Findings = found };
    }
}
