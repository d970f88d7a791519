using System.Collections.Immutable;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Reading.Tables;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Fastenings;

/// <summary>[fastenings] and [[fastenings.layer]]: how planks are held, for all layers and for those done otherwise.</summary>
internal static class FasteningsBinder
{
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
        double? depth = table.Length(FasteningKeys.BackingDepth, units);
        double spare = table.NumberOrDefault(FasteningKeys.Spare);

        ImmutableDictionary<string, FasteningSettings>.Builder byLayer =
            ImmutableDictionary.CreateBuilder<string, FasteningSettings>();
        string[] known = [.. layers.OfType<PlankLayerSpec>().Select(p => p.Name)];
        foreach (TableReader own in table.Tables(FasteningKeys.Layer))
        {
            string? name = own.Text(FasteningKeys.LayerName);
            FasteningSettings wish = FasteningSettingsBinder.Bind(own, units);
            own.Close();
            if (name is null)
            {
                continue;
            }

            if (!known.Contains(name))
            {
                own.Wrong(
                    FasteningKeys.LayerName,
                    "no layer of planks has that name; there is "
                        + string.Join(", ", known.Select(Quoted.Of))
                );
            }
            else if (!byLayer.TryAdd(name, wish))
            {
                own.Wrong(
                    FasteningKeys.LayerName,
                    "another [[fastenings.layer]] is about this layer already"
                );
            }
        }

        ImmutableDictionary<string, double>.Builder depths = ImmutableDictionary.CreateBuilder<
            string,
            double
        >();
        foreach (TableReader own in table.Tables(FasteningKeys.Backing))
        {
            string? name = own.Text(FasteningKeys.BackingName);
            double? mm = own.Length(FasteningKeys.Depth, units);
            own.Close();
            if (name is not null && mm is { } given && !depths.TryAdd(name, given))
            {
                own.Wrong(FasteningKeys.BackingName, "its depth is given already");
            }
        }

        table.Close();
        return new(usual, byLayer.ToImmutable(), depth, depths.ToImmutable(), spare);
    }
}
