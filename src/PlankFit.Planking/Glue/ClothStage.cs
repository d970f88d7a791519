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
        double ready,
        ImmutableArray<Finding>.Builder findings
    )
    {
        string name = amounts.Planked.Layers[at].Spec.Name;
        if (amounts.ClothOf(name) is not { } cloth)
        {
            return new(name, placing.Mix, [], [], []) { Use = GlueUse.WettingOut };
        }

        Side firstSide = cloth.Spec.SideFirst;
        var wetting = new ClothWetting(name, placing, days);
        List<ClothWetting.WettedSide> sides = [];
        GlueProgress done = amounts.Spec.Done;
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
            double from = sides.Count == 0 ? ready : sides[0].LastAt;
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
                last,
                at + 1 < amounts.Planked.Layers.Length
                    ? amounts.Planked.Layers[at + 1] is PlankLayerPlan
                    : new WeaveStages(amounts, placing, days).AreAsked
                        || amounts.Spec.Fairing is not null
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
}
