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
        List<LayerFastened> OnSide(Side side, IReadOnlyList<LayerFastened> twins) =>
            OfSide((planked, layers, ground), side, twins, were, stop);
        List<LayerFastened> starboard = [],
            port = [];
        if (planked.PlankLayers.FirstOrDefault() is { } first && ground.AreTwins(first))
        {
            starboard = OnSide(Side.Starboard, []);
            PlankLayerPlan[] all = [.. planked.PlankLayers];
            port = OnSide(Side.Port, [.. starboard.TakeWhile((_, i) => ground.AreTwins(all[i]))]);
        }
        else
        {
            Parallel.Invoke(
                new ParallelOptions { CancellationToken = stop },
                () => starboard = OnSide(Side.Starboard, []),
                () => port = OnSide(Side.Port, [])
            );
        }

        ImmutableArray<LayerFastened> fastened = [.. starboard, .. port];
        var byPlank = fastened.SelectMany(s => s.Planks).ToImmutableDictionary(p => p.PlankId);
        ImmutableArray<TimberGap> gaps = [.. fastened.SelectMany(s => s.Gaps)];
        return new(
            layers,
            byPlank,
            FasteningTotals.Of(planked, layers, byPlank, spec.SparePercent),
            [.. FasteningFindings.Of(spec, planked, behind, layers, byPlank, fastened)]
        )
        {
            Gaps = gaps,
            SparePercent = spec.SparePercent,
            Fastened = fastened,
        };
    }

    /// <param name="twins">Of starboard, the first layers, as many as port is the mirror image of: those below as well.</param>
    private static List<LayerFastened> OfSide(
        (Planked Planked, ImmutableArray<LayerFastenings> Layers, FasteningGround Ground) of,
        Side side,
        IReadOnlyList<LayerFastened> twins,
        ImmutableArray<LayerFastened> were,
        CancellationToken stop
    )
    {
        List<LayerFastened> made = [];
        foreach (
            (PlankLayerPlan layer, LayerFastenings rule) in of.Planked.PlankLayers.Zip(of.Layers)
        )
        {
            stop.ThrowIfCancellationRequested();
            LayerGround here = of.Ground.Of(layer, side);
            LayerFastened? below = made.LastOrDefault();
            made.Add(
                were.FirstOrDefault(w => w.IsBy(here, rule, below))
                    ?? twins.ElementAtOrDefault(made.Count)?.Mirrored(here, below)
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
