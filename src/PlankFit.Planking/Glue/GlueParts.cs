using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Layers;

namespace PlankFit.Planking.Glue;

/// <summary>What is laid with resin or glue that is no plank: cloth, coats over it, fairing and fillets, a side each.</summary>
public static class GlueParts
{
    /// <returns>In the order of the work, starboard first; with no hour.</returns>
    /// <param name="layers">The bottom's, from the inside out.</param>
    public static ImmutableArray<GlueDone> Of(GlueSpec spec, ImmutableArray<LayerSpec> layers)
    {
        ImmutableArray<GlueDone>.Builder parts = ImmutableArray.CreateBuilder<GlueDone>();
        void Add(Func<Side, GlueDone> of) => parts.AddRange(AmountPlanner.BothSides.Select(of));
        if (spec.Resin is not null)
        {
            for (int i = 0; i < layers.Length; i++)
            {
                if (layers[i] is not ClothLayerSpec { Name: var cloth })
                {
                    continue;
                }

                int coats =
                    i + 1 == layers.Length && spec.WeaveGsm is not null ? spec.WeaveCoats : 0;
                for (int coat = 0; coat <= coats; coat++)
                {
                    Add(side => new(null, cloth, side, 0) { Coat = coat });
                }
            }
        }

        foreach (string finish in spec.Finishes)
        {
            Add(side => new(null, null, side, 0) { Finish = finish });
        }

        return parts.ToImmutable();
    }
}
