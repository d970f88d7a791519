using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>Fastens every layer of both sides, from the inside out: each skin misses what holds those below.</summary>
internal static class FasteningPlanner
{
    public static FasteningPlan? Of(BottomPlan plan, CancellationToken stop)
    {
        if (plan.Job.Fastenings is not { } spec)
        {
            return null;
        }

        ImmutableArray<LayerFastenings> layers = LayerRules.Of(plan, spec);
        var byPlank = ImmutableDictionary.CreateBuilder<string, PlankFastenings>();
        foreach (Side side in new[] { Side.Starboard, Side.Port })
        {
            var fastened = new List<Uv>();
            PlankLayerPlan? below = null;
            foreach ((PlankLayerPlan layer, LayerFastenings rule) in plan.PlankLayers.Zip(layers))
            {
                stop.ThrowIfCancellationRequested();
                var under = SkinBelow.Of(
                    below,
                    side,
                    plan.Joints,
                    fastened,
                    layer.Of(side).Surface
                );
                foreach (PlankFastenings made in Layer(plan, layer, rule, side, under))
                {
                    byPlank.Add(made.PlankId, made);
                    fastened.AddRange(made.Points.Select(f => f.On));
                }

                below = layer;
            }
        }

        ImmutableDictionary<string, PlankFastenings> all = byPlank.ToImmutable();
        return new(
            layers,
            all,
            FasteningTotals.Of(plan, layers, all, spec.SparePercent),
            [.. FasteningFindings.Of(plan, spec, layers, all)]
        );
    }

    private static PlankFastenings[] Layer(
        BottomPlan plan,
        PlankLayerPlan layer,
        LayerFastenings rule,
        Side side,
        SkinBelow below
    )
    {
        ImmutableArray<Plank> planks = layer.On(side);
        var made = new PlankFastenings[planks.Length];
        Parallel.For(
            0,
            planks.Length,
            i =>
            {
                Plank plank = planks[i];
                made[i] = PlankFastener.Of(
                    new FramedPlank(plank),
                    rule,
                    plan.Behind?.On(plank.Id) ?? [],
                    plan.Joints?.On(plank.Id)?.Joints ?? [],
                    below
                );
            }
        );
        return made;
    }
}
