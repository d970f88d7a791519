using System.Collections.Immutable;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Jobs;

/// <summary>[fastenings] and [[fastenings.layer]]: how planks are held, for all layers and for those done otherwise.</summary>
internal static class FasteningsBinder
{
    private const string PercentAccepted = "accepted: 0 to 100";

    public static FasteningSpec? Bind(
        TableReader? table,
        ImmutableArray<LayerSpec> layers,
        LengthUnit units
    )
    {
        if (table is null)
        {
            return null;
        }

        FasteningSettings usual = FasteningSettingsBinder.Bind(table, units);
        double? depth = FasteningSettingsBinder.Positive(table, "backing-depth", units),
            spare = table.Number("spare", PercentAccepted);
        if (spare is < 0 or > 100)
        {
            table.Wrong("spare", PercentAccepted);
        }

        var byLayer = ImmutableDictionary.CreateBuilder<string, FasteningSettings>();
        string[] known = [.. layers.OfType<PlankLayerSpec>().Select(p => p.Name)];
        foreach (TableReader own in table.Tables("layer", "fastenings.layer"))
        {
            string? name = own.Text(
                "layer",
                "the name of the [[layer]] of planks that it is about"
            );
            FasteningSettings wish = FasteningSettingsBinder.Bind(own, units);
            own.Close();
            if (name is null)
            {
                continue;
            }

            if (!known.Contains(name))
            {
                own.Wrong(
                    "layer",
                    "no layer of planks has that name; there is "
                        + string.Join(", ", known.Select(Quoted.Of))
                );
            }
            else if (!byLayer.TryAdd(name, wish))
            {
                own.Wrong("layer", "another [[fastenings.layer]] is about this layer already");
            }
        }

        var depths = ImmutableDictionary.CreateBuilder<string, double>();
        foreach (TableReader own in table.Tables("backing", "fastenings.backing"))
        {
            string? name = own.Text("name", "the name of the [[behind]] that it is about");
            double? mm = FasteningSettingsBinder.Positive(own, "depth", units, required: true);
            own.Close();
            if (name is not null && mm is { } given && !depths.TryAdd(name, given))
            {
                own.Wrong("name", "its depth is given already");
            }
        }

        table.Close();
        return new(
            usual,
            byLayer.ToImmutable(),
            depth,
            depths.ToImmutable(),
            spare ?? FasteningSpec.UsualSparePercent
        );
    }
}
