using System.Collections.Immutable;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Fastenings;

/// <summary>Fastens every layer of both sides, from the inside out: each skin misses what holds those below.</summary>
internal static class FasteningPlanner
{
    public static FasteningPlan Of(
        FasteningSpec spec,
        Planked planked,
        FramingPlan behind,
        JointPlan? joints,
        CancellationToken stop
    )
    {
        ImmutableArray<LayerFastenings> layers = LayerRules.Of(spec, planked, behind);
        var byPlank = ImmutableDictionary.CreateBuilder<PlankId, PlankFastenings>();
        var gaps = ImmutableArray.CreateBuilder<TimberGap>();
        foreach (Side side in new[] { Side.Starboard, Side.Port })
        {
            var fastened = new List<Uv>();
            PlankLayerPlan? below = null;
            foreach (
                (PlankLayerPlan layer, LayerFastenings rule) in planked.PlankLayers.Zip(layers)
            )
            {
                stop.ThrowIfCancellationRequested();
                var under = SkinBelow.Of(below, side, joints, fastened, layer.Of(side).Surface);
                foreach (
                    PlankFastenings made in Layer(behind, joints, layer, rule, side, under, gaps)
                )
                {
                    byPlank.Add(made.PlankId, made);
                    fastened.AddRange(made.Points.Select(f => f.On));
                }

                below = layer;
            }
        }

        ImmutableDictionary<PlankId, PlankFastenings> all = byPlank.ToImmutable();
        return new(
            layers,
            all,
            FasteningTotals.Of(planked, layers, all, spec.SparePercent),
            [.. FasteningFindings.Of(spec, planked, behind, layers, all, gaps.ToImmutable())]
        )
        {
            Gaps = gaps.ToImmutable(),
        };
    }

    private static PlankFastenings[] Layer(
        FramingPlan behind,
        JointPlan? joints,
        PlankLayerPlan layer,
        LayerFastenings rule,
        Side side,
        SkinBelow below,
        ImmutableArray<TimberGap>.Builder gaps
    )
    {
        ImmutableArray<Plank> planks = layer.On(side);
        var work = new FasteningLayout[planks.Length];
        Parallel.For(
            0,
            planks.Length,
            i =>
            {
                work[i] = new(
                    new FramedPlank(planks[i]),
                    rule,
                    behind.On(planks[i].Id),
                    joints?.On(planks[i].Id)?.Joints ?? [],
                    below
                );
                work[i].FastenToTimber();
            }
        );
        TimberRun[] runs =
        [
            .. work.SelectMany(w => w.Stretches)
                .GroupBy(s => s.Name)
                .SelectMany(timber => TimberRun.Of(timber, rule.Rule.SpacingMm)),
        ];
        RunSpacing.Keep(runs, rule.Rule);
        gaps.AddRange(runs.SelectMany(r => TimberGaps.Of(r, rule.Rule, layer.Number, side)));

        var made = new PlankFastenings[planks.Length];
        Parallel.For(0, planks.Length, i => made[i] = work[i].Finished());
        return made;
    }
}
