using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Fastenings;

/// <summary>Fastens every layer of both sides, from the inside out: each skin misses what holds those below.</summary>
internal static class FasteningPlanner
{
    /// <param name="before">Of another job: layers that would be fastened the same are taken over.</param>
    public static FasteningPlan Of(
        FasteningSpec spec,
        Planked planked,
        FramingPlan behind,
        FasteningGround ground,
        FasteningPlan? before,
        CancellationToken stop
    )
    {
        ImmutableArray<LayerFastenings> layers = LayerRules.Of(spec, planked, behind);
        ImmutableArray<LayerFastened> were = before?.Fastened ?? [];
        var sides = new List<LayerFastened>[2];
        Parallel.For(
            0,
            2,
            new ParallelOptions { CancellationToken = stop },
            i =>
                sides[i] = OfSide(
                    planked,
                    layers,
                    ground,
                    i == 0 ? Side.Starboard : Side.Port,
                    were,
                    stop
                )
        );
        ImmutableArray<LayerFastened> fastened = [.. sides.SelectMany(s => s)];
        var all = fastened.SelectMany(s => s.Planks).ToImmutableDictionary(p => p.PlankId);
        ImmutableArray<TimberGap> gaps = [.. fastened.SelectMany(s => s.Gaps)];
        return new(
            layers,
            all,
            FasteningTotals.Of(planked, layers, all, spec.SparePercent),
            [.. FasteningFindings.Of(spec, planked, behind, layers, all, fastened)]
        )
        {
            Gaps = gaps,
            SparePercent = spec.SparePercent,
            Fastened = fastened,
        };
    }

    private static List<LayerFastened> OfSide(
        Planked planked,
        ImmutableArray<LayerFastenings> layers,
        FasteningGround ground,
        Side side,
        ImmutableArray<LayerFastened> were,
        CancellationToken stop
    )
    {
        List<LayerFastened> made = [];
        foreach ((PlankLayerPlan layer, LayerFastenings rule) in planked.PlankLayers.Zip(layers))
        {
            stop.ThrowIfCancellationRequested();
            LayerGround here = ground.Of(layer, side);
            LayerFastened? below = made.LastOrDefault();
            made.Add(
                were.FirstOrDefault(w => w.IsBy(here, rule, below))
                    ?? Fastened(here, rule, below, side)
            );
        }

        return made;
    }

    private static LayerFastened Fastened(
        LayerGround ground,
        LayerFastenings rule,
        LayerFastened? below,
        Side side
    )
    {
        (Uv, Vec3)[] missed = ground.Below.Raised(below?.Places() ?? []);
        var work = new FasteningLayout[ground.Planks.Count];
        Parallel.For(
            0,
            work.Length,
            i =>
            {
                work[i] = new(ground.Planks[i], rule, missed);
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
        ImmutableArray<TimberGap> gaps =
        [
            .. runs.SelectMany(r => TimberGaps.Of(r, rule.Rule, rule.Layer, side)),
        ];
        var finished = new PlankFastenings[work.Length];
        Parallel.For(0, work.Length, i => finished[i] = work[i].Finished());
        return new(ground, rule, below, [.. finished], gaps);
    }
}
