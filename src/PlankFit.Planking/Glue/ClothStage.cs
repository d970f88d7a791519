using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Glue;

/// <summary>A cloth's stage: both sides wetted out, the one that the job says first, and trimmed while they are tacky; on another cloth as <see cref="LaidOnCloth"/> has it.</summary>
internal static class ClothStage
{
    public static GlueStage? Of(
        AmountPlanner amounts,
        BatchPlacing placing,
        WorkDays days,
        int at,
        (GlueStage? Under, double Ready) after,
        ImmutableArray<Finding>.Builder findings
    )
    {
        string name = amounts.Planked.Layers[at].Spec.Name;
        if (amounts.ClothOf(name) is not { } cloth)
        {
            return ByHand(amounts, placing, days, at);
        }

        GlueProgress done = amounts.Spec.Done;
        if (
            AmountPlanner.BothSides.Any(s => done.WettedAt(name, s) is null)
            && UnknownCloth.Under(amounts, at, after.Under) is { } unknown
        )
        {
            findings.Add(unknown);
            return null;
        }

        ClothShare[] shares =
        [
            .. AmountPlanner
                .BothSides.Where(s => done.WettedAt(name, s) is null)
                .OrderBy(s => s == cloth.Spec.SideFirst ? 0 : 1)
                .Select(s => Share(amounts, placing.Mix, at, cloth, s)),
        ];
        var wetting = new ClothWetting(name, placing, days);
        LaidOnCloth laid = Laid(
            wetting,
            shares,
            after.Under is { IsCloth: true, OnAt: not null } under ? under : null,
            after.Ready,
            amounts.Planked.Job.Units
        );
        if (laid.Why is { } why)
        {
            findings.Add(why);
            return null;
        }

        ImmutableArray<ClothWetting.WettedSide> sides = laid.Sides;
        double[] onAt =
        [
            .. AmountPlanner.BothSides.Select(s => done.WettedAt(name, s)).OfType<double>(),
            .. sides.SelectMany(s => new[] { s.FirstAt, s.LastAt }),
        ];
        double last = onAt.Max();
        TrimSpan[] trims = [.. sides.Select(s => s.Trim).OfType<TrimSpan>()];
        return new(
            name,
            placing.Mix,
            [.. sides.SelectMany(s => s.Batches)],
            [
                .. laid.Before,
                .. HoldPoints.BeforeCloth(
                    amounts.Spec,
                    (IsOnCloth(amounts, at), amounts.OnWood(at)),
                    amounts.Planked.Job.Units
                ),
            ],
            HoldPoints.AfterCloth(
                placing,
                trims,
                sides.IsEmpty,
                last,
                GoesOn(amounts, placing, days, at)
            )
        )
        {
            Use = GlueUse.WettingOut,
            ForWood = amounts.PrimingPart(placing.Mix, cloth.Cloth, amounts.OnWood(at)),
            OnAt = (onAt.Min(), last),
            IsTaken = done.IsTaken(name, 0),
            Trims = [.. trims],
            WorkMinutes = sides.IsEmpty ? 0 : days.Between(sides[0].Batches[0].MixAt, last),
        };
    }

    /// <summary>What is laid by hand and not cut by the plan: it has no batches, and its hours only where the progress has both its sides.</summary>
    private static GlueStage ByHand(
        AmountPlanner amounts,
        BatchPlacing placing,
        WorkDays days,
        int at
    )
    {
        string name = amounts.Planked.Layers[at].Spec.Name;
        GlueProgress done = amounts.Spec.Done;
        double[] onAt =
        [
            .. AmountPlanner.BothSides.Select(s => done.WettedAt(name, s)).OfType<double>(),
        ];
        return onAt.Length < AmountPlanner.BothSides.Length
            ? new(name, placing.Mix, [], [], []) { Use = GlueUse.WettingOut }
            : new(
                name,
                placing.Mix,
                [],
                [],
                HoldPoints.AfterCloth(
                    placing,
                    [],
                    true,
                    onAt.Max(),
                    GoesOn(amounts, placing, days, at)
                )
            )
            {
                Use = GlueUse.WettingOut,
                OnAt = (onAt.Min(), onAt.Max()),
                IsTaken = done.IsTaken(name, 0),
            };
    }

    private static ClothShare Share(
        AmountPlanner amounts,
        Mix mix,
        int at,
        SheathedLayer cloth,
        Side side
    )
    {
        var area = ClothSide.Of(amounts.Planked, at, cloth, side);
        return new(
            side,
            area.Mm2,
            1000 * amounts.ClothKgPerM2(mix, cloth.Cloth, amounts.OnWood(at)),
            area.TrimMm / 1000
        );
    }

    /// <param name="under">The cloth that it lies on; null where it lies on wood.</param>
    private static LaidOnCloth Laid(
        ClothWetting wetting,
        ClothShare[] shares,
        GlueStage? under,
        double ready,
        LengthUnit unit
    )
    {
        if (under is not null && shares.Length > 0)
        {
            return LaidOnCloth.Of(wetting, shares, under, ready, unit);
        }

        ImmutableArray<ClothWetting.WettedSide> sides = LaidOnCloth.OnWood(wetting, shares, ready);
        return new(
            sides,
            [],
            sides.Length < shares.Length
                ? WhyNoBatch.OfCloth(wetting, shares[sides.Length], unit)
                : null
        );
    }

    private static bool IsOnCloth(AmountPlanner amounts, int at) =>
        at > 0 && amounts.Planked.Layers[at - 1] is ClothLayerPlan;

    /// <summary>A skin, another cloth, coats or filler come on it, and what holds is said before these.</summary>
    private static bool GoesOn(
        AmountPlanner amounts,
        BatchPlacing placing,
        WorkDays days,
        int at
    ) =>
        at + 1 < amounts.Planked.Layers.Length
        || new WeaveStages(amounts, placing, days).AreAsked
        || amounts.Spec.Fairing is not null;
}
