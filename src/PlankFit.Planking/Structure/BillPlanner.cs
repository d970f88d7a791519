using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Structure;

/// <summary>One bill of materials: timber, cloth, resin and hardener, what holds planks.</summary>
internal static class BillPlanner
{
    public static ImmutableArray<BillRow> Of(StructureGround ground) =>
        [
            .. ground.Planked.PlankLayers.Select(l => Timber(ground, l)),
            .. Cloths(ground),
            .. (ground.Glue?.Totals ?? []).SelectMany(Resin),
            .. ground.Fastenings,
        ];

    /// <summary>As it is in the boat; what is bought for it is told by the plan of cutting.</summary>
    private static BillRow Timber(StructureGround ground, PlankLayerPlan layer)
    {
        double area = new[] { Side.Starboard, Side.Port }.Sum(s => layer.Of(s).AreaMm2),
            volume = area * layer.Planks.ThicknessMm / 1e9;
        return new(
            "timber",
            ground.WoodOf(layer)?.Title ?? "wood, no species named",
            layer.Planks.Name,
            volume,
            "m³",
            $"as it lies on the hull: {NumberText.Padded(area / 1e6, 2)} m² of {NumberText.Trimmed(layer.Planks.ThicknessMm, 1)} mm; what is bought for it, sawing waste and all, is in the plan of cutting"
        );
    }

    private static IEnumerable<BillRow> Cloths(StructureGround ground)
    {
        for (int i = 0; i < ground.Planked.Layers.Length; i++)
        {
            string name = ground.Planked.Layers[i].Spec.Name;
            if (
                ground.Planked.Layers[i] is not ClothLayerPlan
                || ground.ClothOf(name) is not { } cloth
            )
            {
                continue;
            }

            SheathingSpec lies = ground.Sheathing.First(s => s.Layer == name);
            double area = new[] { Side.Starboard, Side.Port }.Sum(s =>
                ClothSide.Of(ground.Planked, i, lies, s).Mm2
            );
            ClothRoll roll = cloth.Rolls[0];
            yield return new(
                "cloth",
                cloth.Name,
                name,
                area / 1e6,
                "m²",
                "on the hull, laps and wraps with it, trimmed; what is cut from the roll is more"
            )
            {
                Cost = roll.Price is { } price
                    ? price * area / (roll.WidthMm * roll.LengthMm)
                    : null,
            };
        }
    }

    private static IEnumerable<BillRow> Resin(MixTotal total)
    {
        MixParts order = total.Order;
        const string From = "upper likely amount, waste among it, each rate in the list of resin";
        yield return new("resin", total.Mix.Name, "all of its uses", order.ResinKg, "kg", From)
        {
            Cost = total.Mix.PricePerKg * order.ResinKg,
        };
        yield return new(
            "hardener",
            total.Mix.Name,
            "all of its uses",
            order.HardenerKg,
            "kg",
            From
        )
        {
            Cost = total.Mix.PricePerKg * order.HardenerKg,
        };
    }
}
