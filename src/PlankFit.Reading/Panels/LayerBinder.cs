using System.Collections.Immutable;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Planking.Wood;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Tables;
using PlankFit.Reading.Timber;

namespace PlankFit.Reading.Panels;

/// <summary>[[layer]]: planks or cloth, from the inside out.</summary>
internal static class LayerBinder
{
    public static ImmutableArray<LayerSpec> Bind(
        ImmutableArray<TableReader> tables,
        ImmutableArray<Species> woods,
        LengthUnit units
    )
    {
        ImmutableArray<LayerSpec>.Builder layers = ImmutableArray.CreateBuilder<LayerSpec>();
        var names = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (TableReader table in tables)
        {
            bool? cloth = table.Has(LayerKeys.Cloth) ? table.Choice(LayerKeys.Cloth) : false;
            string name = table.Text(LayerKeys.Name) ?? $"layer {layers.Count + 1}";
            if (!names.TryAdd(name, layers.Count + 1))
            {
                table.Wrong(LayerKeys.Name, $"layer {names[name]} has this name already");
            }

            double thickness =
                table.Length(cloth == true ? LayerKeys.ClothThickness : LayerKeys.Thickness, units)
                ?? 0;
            layers.Add(
                cloth switch
                {
                    true => Cloth(table, name, thickness, units),
                    false => Planks(table, name, thickness, woods, units),
                    // Where the kind itself is wrong the other keys cannot be judged.
                    null => new ClothLayerSpec(name, thickness),
                }
            );
            table.Find(LayerKeys.Panel);
            table.Close();
        }

        return layers.ToImmutable();
    }

    private static ClothLayerSpec Cloth(
        TableReader table,
        string name,
        double thickness,
        LengthUnit units
    )
    {
        foreach (JobKey key in LayerKeys.OfPlanks)
        {
            table.Wrong(key, "belongs to planks; a cloth has kind, name, thickness and lap");
        }

        return new(name, thickness) { Lap = Lap(table, units) };
    }

    private static ClothLap? Lap(TableReader table, LengthUnit units)
    {
        if (table.Table(LayerKeys.Lap) is not { } lap)
        {
            return null;
        }

        double? width = lap.Length(LapKeys.Width, units),
            from = lap.Length(LapKeys.From, units),
            to = lap.Length(LapKeys.To, units);
        lap.Close();
        if (to <= from)
        {
            lap.Wrong(LapKeys.To, "must be greater than \"from\"");
        }

        return width is { } mm ? new(mm, from, to) : null;
    }

    private static PlankLayerSpec Planks(
        TableReader table,
        string name,
        double thickness,
        ImmutableArray<Species> woods,
        LengthUnit units
    )
    {
        table.Wrong(
            LayerKeys.Lap,
            "belongs to a cloth, whose port and starboard lap under the keel"
        );
        double width = table.Length(LayerKeys.Width, units) ?? 0;
        if (LayerKeys.Width.Likely!.Holds(width) && width < thickness)
        {
            table.Doubtful(LayerKeys.Width, "the planks are thicker than they are wide");
        }

        double? stagger = table.Number(LayerKeys.Stagger);
        return new(
            name,
            thickness,
            new(width, table.LengthOrDefault(LayerKeys.Gap, units))
            {
                Species = SpeciesBinder.Named(table, woods, LayerKeys.Species),
            },
            new(
                table.Choice(LayerKeys.Heading) ?? Heads.Aft,
                table.Number(LayerKeys.Angle) ?? 45,
                table.Length(LayerKeys.Master, units),
                table.ChoiceOrDefault(LayerKeys.Held),
                table.NumberOrDefault(LayerKeys.Drift),
                stagger == 0 ? null : stagger
            )
        );
    }
}
