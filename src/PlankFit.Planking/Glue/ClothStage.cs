using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Glue;

/// <summary>A cloth's stage: both sides wetted out, the one that the job says first, and trimmed while they are tacky.</summary>
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

        Side firstSide = cloth.Spec.SideFirst;
        var wetting = new ClothWetting(name, placing, days);
        List<ClothWetting.WettedSide> sides = [];
        List<double> onAt = [];
        foreach (Side side in AmountPlanner.BothSides.OrderBy(s => s == firstSide ? 0 : 1))
        {
            if (done.WettedAt(name, side) is { } wettedAt)
            {
                onAt.Add(wettedAt);
                continue;
            }

            var area = ClothSide.Of(amounts.Planked, at, cloth, side);
            var share = new ClothShare(
                side,
                area.Mm2,
                1000 * amounts.ClothKgPerM2(placing.Mix, cloth.Cloth, amounts.OnWood(at)),
                area.TrimMm / 1000
            );
            double from = sides.Count == 0 ? after.Ready : sides[0].LastAt;
            (double, double)[] taken =
            [
                .. sides.Select(s => s.Trim).OfType<TrimSpan>().Select(t => (t.At, t.DoneAt)),
            ];
            if (wetting.Of(share, from, taken) is not { } wetted)
            {
                findings.Add(WhyNoBatch.OfCloth(wetting, share, amounts.Planked.Job.Units));
                return null;
            }

            sides.Add(wetted);
            onAt.AddRange([wetted.FirstAt, wetted.LastAt]);
        }

        double last = onAt.Max();
        TrimSpan[] trims = [.. sides.Select(s => s.Trim).OfType<TrimSpan>()];
        return new(
            name,
            placing.Mix,
            [.. sides.SelectMany(s => s.Batches)],
            HoldPoints.BeforeCloth(amounts.Spec, amounts.OnWood(at), amounts.Planked.Job.Units),
            HoldPoints.AfterCloth(
                placing,
                trims,
                sides.Count == 0,
                last,
                GoesOn(amounts, placing, days, at)
            )
        )
        {
            Use = GlueUse.WettingOut,
            OnAt = (onAt.Min(), last),
            IsTaken = done.IsTaken(name, 0),
            Trims = [.. trims],
            WorkMinutes = sides.Count == 0 ? 0 : days.Between(sides[0].Batches[0].MixAt, last),
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

    /// <summary>A skin, coats or filler come on it, and what holds is said before these.</summary>
    private static bool GoesOn(
        AmountPlanner amounts,
        BatchPlacing placing,
        WorkDays days,
        int at
    ) =>
        at + 1 < amounts.Planked.Layers.Length
            ? amounts.Planked.Layers[at + 1] is PlankLayerPlan
            : new WeaveStages(amounts, placing, days).AreAsked || amounts.Spec.Fairing is not null;
}
