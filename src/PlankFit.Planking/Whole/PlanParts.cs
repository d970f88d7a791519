using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>What is worked out from a bottom once its planks are laid, part by part; each takes of those before it what it needs.</summary>
internal static class PlanParts
{
    public static BottomPlan Of(Job job, Planked planked, CancellationToken stop)
    {
        BehindPlan behind = BehindPlanner.Of(job.Behind, planked, stop);
        JointPlan? joints = job.Joints is { } jointed
            ? JointPlanner.Of(jointed, planked, behind, stop)
            : null;
        var plan = new BottomPlan(job, planked)
        {
            Keel = job.Keel.Layers.IsEmpty ? null : KeelPlanner.Of(planked, stop),
            SettingUp = job.SettingUp is { } settingUp
                ? SettingUpPlanner.Of(settingUp, job.Behind, planked, stop)
                : null,
            Behind = job.Behind.IsEmpty ? null : behind,
            Joints = joints,
            Fastenings = job.Fastenings is { } fastened
                ? FasteningPlanner.Of(fastened, planked, behind, joints, stop)
                : null,
            Timber = job.Timber is { } timber ? TimberPlanner.Of(timber, planked, stop) : null,
            Standing = StandingPlanner.Of(planked, stop),
        };
        ImmutableArray<Finding> found =
        [
            .. planked.Findings,
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
