using System.Collections.Immutable;
using PlankFit.Planking.Layers;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Tables;
using PlankFit.Reading.Text;
using PlankFit.Reading.Toml;

namespace PlankFit.Reading.Jobs;

/// <summary>Takes down where a job file says what.</summary>
internal static class PlacesInJob
{
    /// <param name="ofLayer">Tables beside the layers' own, each of which names one, and the key that names it.</param>
    public static JobPlaces Of(
        TableReader root,
        ImmutableArray<TableReader> layerTables,
        ImmutableArray<LayerSpec> layers,
        (ImmutableArray<TableReader> Tables, JobKey Layer) ofLayer
    )
    {
        ImmutableDictionary<(string, string?), Place>.Builder ofLayers =
            ImmutableDictionary.CreateBuilder<(string, string?), Place>();
        foreach ((TableReader table, LayerSpec layer) in layerTables.Zip(layers))
        {
            ofLayers[(layer.Name, null)] = table.At;
            foreach ((string path, Place at) in table.Places())
            {
                ofLayers[(layer.Name, path)] = at;
            }
        }

        foreach (TableReader table in ofLayer.Tables)
        {
            if (table.Find(ofLayer.Layer)?.Value is TomlString { Value: var layer })
            {
                ofLayers.TryAdd((layer, null), table.At);
                foreach ((string path, Place at) in table.Places())
                {
                    ofLayers[(layer, path)] = at;
                }
            }
        }

        return new(
            root.Places().ToImmutableDictionary(p => p.Path, p => p.At),
            ofLayers.ToImmutable()
        );
    }
}
