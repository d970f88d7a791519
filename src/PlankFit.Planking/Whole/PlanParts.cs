using System.Collections.Immutable;
using PlankFit.Planking.AsBuilt;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Joints;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Laying;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Structure;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Timber;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Whole;

/// <summary>What is worked out from a bottom once its planks are laid, part by part; each takes of those before it what it needs.</summary>
internal static class PlanParts
{
    /// <param name="before">A plan of another job: parts that would be made from the same are taken over from it.</param>
    /// <param name="taped">What the planks were laid to; made from the job's readings and what is trusted, and so the same where these are.</param>
    public static BottomPlan Of(
        Job job,
        Planked planked,
        BottomPlan? before,
        IProgress<PlanProgress>? progress,
        CancellationToken stop,
        TapedHull? taped = null
    )
    {
        var made = new MadeParts(before?.Made ?? []);
        FramingPlan behind = job.Framing.IsEmpty
            ? FramingPlan.None
            : made.Of(
                job.Framing,
                [planked],
                () => FramingPlanner.Of(job.Framing, planked, made.Before<FramingPlan>(), stop)
            );
        JointPlan joints = job.Joints is { } jointed
            ? made.Of(
                jointed,
                [planked, behind],
                () => JointPlanner.Of(jointed, planked, behind, stop)
            )
            : JointPlan.None;
        FasteningGround? ground = job.Fastenings is null
            ? null
            : made.Of(
                null,
                [planked, behind, joints],
                () =>
                    FasteningGround.Of(
                        planked,
                        behind,
                        joints,
                        made.Before<FasteningGround>(),
                        stop
                    )
            );
        // What planks hang on is the same whatever the table is trusted with.
        Sensitivities? slopes = job.Trust is null
            ? null
            : made.Of(null, [planked], () => Sensitivities.Of(planked, progress, stop));
        FasteningPlan? fastenings =
            job.Fastenings is { } fastened && ground is not null
                ? made.Of(
                    fastened,
                    [planked, behind, ground],
                    () =>
                        FasteningPlanner.Of(
                            fastened,
                            planked,
                            behind,
                            ground,
                            made.Before<FasteningPlan>(),
                            stop
                        )
                )
                : null;
        SheathingPlan? cloth = job.Sheathing.IsEmpty
            ? null
            : made.Of(
                (job.Cloths, job.Sheathing, job.Framing),
                [planked],
                () => SheathingPlanner.Of(job.Cloths, job.Sheathing, planked, job.Framing, stop)
            );
        GluePlan? glue = job.Glue is { } glued
            ? made.Of(
                (glued, job.Timber?.ClampSpacingMm),
                [planked, behind, fastenings, cloth],
                () =>
                    GluePlanner.Of(
                        glued,
                        planked,
                        behind,
                        new(
                            id => fastenings?.On(id)?.Points.Count(p => p.IsDriven) ?? 0,
                            job.Timber?.ClampSpacingMm,
                            job.Units
                        ),
                        cloth,
                        stop
                    )
            )
            : null;
        TimberPlan? timber = job.Timber is { } woods
            ? made.Of(woods, [planked], () => TimberPlanner.Of(woods, planked, stop))
            : null;
        StructurePlan? structure = job.Structure is { } asked
            ? made.Of(
                asked,
                [planked, behind, timber, glue, fastenings, cloth],
                () =>
                    StructurePlanner.Of(
                        asked,
                        new(planked, behind, timber, glue, cloth)
                        {
                            Fastenings = Bill(fastenings, job.Units),
                        }
                    )
            )
            : null;
        var plan = new BottomPlan(job, planked)
        {
            Keel = job.Keel.Layers.IsEmpty
                ? null
                : made.Of(null, [planked], () => KeelPlanner.Of(planked, stop)),
            SettingUp = job.SettingUp is { } settingUp
                ? made.Of(
                    (settingUp, job.Framing),
                    [planked.DrawnKeel],
                    () => SettingUpPlanner.Of(settingUp, job.Framing, planked.DrawnKeel, stop)
                )
                : null,
            Framing = behind,
            Joints = joints,
            Fastenings = fastenings,
            Glue = glue,
            Timber = timber,
            Structure = structure,
            Trust =
                job.Trust is { } trust && slopes is not null
                    ? made.Of(
                        trust,
                        [planked, slopes],
                        () =>
                            TrustPlanner.Of(
                                trust,
                                planked,
                                slopes,
                                taped?.Sides,
                                taped?.Tables is not null,
                                stop
                            )
                    )
                    : null,
            Sheathing = cloth,
            AsBuilt = planked.Job.AsBuilt.IsEmpty
                ? null
                : made.Of(null, [planked], () => AsBuiltPlanner.Of(planked, stop)),
            Made = made.All,
        };
        ImmutableArray<Finding> found =
        [
            .. planked.Findings,
            .. plan.Keel?.Findings ?? [],
            .. plan.SettingUp?.Findings ?? [],
            .. plan.Framing.Findings,
            .. plan.Joints.Findings,
            .. plan.Fastenings?.Findings ?? [],
            .. plan.Timber?.Findings ?? [],
            .. plan.Glue?.Findings ?? [],
            .. plan.Structure?.Findings ?? [],
            .. plan.Trust?.Findings ?? [],
            .. plan.Sheathing?.Findings ?? [],
            .. plan.AsBuilt?.Findings ?? [],
        ];
        return plan with { Findings = found };
    }

    /// <summary>What holds planks, as rows of the bill of materials.</summary>
    private static ImmutableArray<BillRow> Bill(FasteningPlan? plan, LengthUnit unit) =>
        [
            .. (plan?.Totals ?? [])
                .Where(t => t.IsToBuy && t.WithSpare > 0)
                .GroupBy(t => (t.Name, t.Shape, t.LengthMm))
                .Select(g => new BillRow(
                    "fastenings",
                    (g.Key.Name ?? g.Key.Shape.ToString().ToLowerInvariant())
                        + (g.Key.LengthMm is { } mm ? $", {LengthText.FormatExact(mm, unit)}" : ""),
                    string.Join(", ", g.Select(t => $"layer {t.Layer}").Distinct()),
                    g.Sum(t => t.WithSpare),
                    "pieces",
                    $"counted on every plank, {NumberText.Trimmed(plan!.SparePercent, 0)} % spare: the job's rule"
                )),
        ];
}
