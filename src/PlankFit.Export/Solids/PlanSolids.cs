using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Solids;

/// <summary>All planks of a plan as bodies, in the order of its lists: layer by layer from the inside, starboard before port, from forward.</summary>
public static class PlanSolids
{
    /// <summary>For looking at, mm: what no screen shows of a whole hull.</summary>
    public const double ForLooking = 0.3;

    public static ImmutableArray<PlankSolid> Of(BottomPlan plan, double toleranceMm = ForLooking)
    {
        (Plank Plank, double Thickness)[] planks =
        [
            .. plan.AllPlankLayers.SelectMany(l =>
                Enum.GetValues<Side>()
                    .SelectMany(s => l.Layer.On(s))
                    .Select(p => (p, l.Layer.Spec.ThicknessMm))
            ),
        ];
        var solids = new PlankSolid[planks.Length];
        _ = Parallel.For(
            0,
            planks.Length,
            i => solids[i] = PlankSolid.Of(planks[i].Plank, planks[i].Thickness, toleranceMm)
        );
        return [.. solids];
    }
}
