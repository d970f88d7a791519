using System.Collections.Immutable;
using PlankFit.Planking.AsBuilt;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Joints;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Laying;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Timber;

namespace PlankFit.Planking.Whole;

/// <summary>What is worked out from a bottom once its planks are laid, part by part; each takes of those before it what it needs.</summary>
internal static class PlanParts
{
    public static BottomPlan Of(Job job, Planked planked, CancellationToken stop)
    {
        FramingPlan behind = FramingPlanner.Of(job.Framing, planked, stop);
        JointPlan? joints = job.Joints is { } jointed
            ? JointPlanner.Of(jointed, planked, behind, stop)
            : null;
        var plan = new BottomPlan(job, planked)
        {
            Keel = job.Keel.Layers.IsEmpty ? null : KeelPlanner.Of(planked, stop),
            SettingUp = job.SettingUp is { } settingUp
                ? SettingUpPlanner.Of(settingUp, job.Framing, planked, stop)
                : null,
            Framing = job.Framing.IsEmpty ? null : behind,
            Joints = joints,
            Fastenings = job.Fastenings is { } fastened
                ? FasteningPlanner.Of(fastened, planked, behind, joints, stop)
                : null,
            Timber = job.Timber is { } timber ? TimberPlanner.Of(timber, planked, stop) : null,
            AsBuilt = AsBuiltPlanner.Of(planked, stop),
        };
        ImmutableArray<Finding> found =
        [
            .. planked.Findings,
            .. plan.Keel?.Findings ?? [],
            .. plan.SettingUp?.Findings ?? [],
            .. plan.Framing?.Findings ?? [],
            .. plan.Joints?.Findings ?? [],
            .. plan.Fastenings?.Findings ?? [],
            .. plan.Timber?.Findings ?? [],
            .. plan.AsBuilt?.Findings ?? [],
        ];
        return plan with { Findings = found };
    }
}
