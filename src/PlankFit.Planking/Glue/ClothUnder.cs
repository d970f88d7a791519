using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Layers;

namespace PlankFit.Planking.Glue;

/// <summary>Cloth that lies under a plank that is down is on, whether anybody wrote it down or not.</summary>
public static class ClothUnder
{
    /// <summary>The sides of cloth under planks that are down and of which nothing is said: on when the first plank over it was down, at the latest.</summary>
    /// <param name="layers">The bottom's, from the inside out.</param>
    public static ImmutableArray<GlueDone> Of(GlueProgress done, ImmutableArray<LayerSpec> layers)
    {
        int[] skins =
        [
            .. Enumerable.Range(0, layers.Length).Where(i => layers[i] is PlankLayerSpec),
        ];
        ImmutableArray<GlueDone>.Builder under = ImmutableArray.CreateBuilder<GlueDone>();
        foreach ((LayerSpec layer, int at) in layers.Select((l, i) => (l, i)))
        {
            if (layer is not ClothLayerSpec cloth)
            {
                continue;
            }

            foreach (
                IGrouping<Side, GlueDone> side in done
                    .Rows.Where(r =>
                        r.Plank is { } plank
                        && plank.Layer >= 1
                        && plank.Layer <= skins.Length
                        && skins[plank.Layer - 1] > at
                        && done.WettedAt(cloth.Name, plank.Side) is null
                    )
                    .GroupBy(r => r.Side)
            )
            {
                under.Add(new(null, cloth.Name, side.Key, side.Min(r => r.At)));
            }
        }

        return under.ToImmutable();
    }
}
