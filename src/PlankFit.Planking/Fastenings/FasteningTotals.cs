using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Fastenings;

/// <summary>Counts by layer, side, kind and length.</summary>
public static class FasteningTotals
{
    internal static ImmutableArray<FasteningTotal> Of(
        Planked planked,
        ImmutableArray<LayerFastenings> layers,
        ImmutableDictionary<PlankId, PlankFastenings> all,
        double sparePercent
    )
    {
        ImmutableArray<FasteningTotal>.Builder totals =
            ImmutableArray.CreateBuilder<FasteningTotal>();
        foreach ((PlankLayerPlan layer, LayerFastenings rule) in planked.PlankLayers.Zip(layers))
        {
            foreach (Side side in new[] { Side.Starboard, Side.Port })
            {
                totals.AddRange(
                    layer
                        .On(side)
                        .SelectMany(p => all[p.Id].Points)
                        .GroupBy(f => (f.Use, f.Kind, f.Shape, f.LengthMm))
                        .OrderBy(g => g.Key.Use)
                        .ThenBy(g => g.Key.LengthMm)
                        .Select(g => new FasteningTotal(
                            layer.Number,
                            side,
                            new(g.Key.Use, g.Key.Kind, g.Key.Shape),
                            g.Key.Use == FasteningUse.Backing ? rule.Rule.Name : null,
                            g.Key.LengthMm,
                            g.Count(),
                            g.Key.Use == FasteningUse.Vent ? g.Count()
                                : g.Key.LengthMm is null ? 0
                                : WithSpare(g.Count(), sparePercent)
                        ))
                );
            }
        }

        return totals.ToImmutable();
    }

    /// <summary>The count and its spare, rounded up to whole ones.</summary>
    public static int WithSpare(int count, double percent) =>
        (int)Math.Ceiling((count * (1 + (percent / 100))) - 1e-9);
}
