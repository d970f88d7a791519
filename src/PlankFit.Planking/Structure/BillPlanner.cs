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
            .. (ground.Glue?.Fillers ?? []).Select(f => Filler(f, ground.Planked.Job.Units)),
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
            "as it lies on the hull, its area by its thickness; what is bought for it, sawing waste and all, is in the plan of cutting"
        );
    }

    /// <summary>What lies on the hull, layer by layer, and what comes off the rolls for it.</summary>
    private static IEnumerable<BillRow> Cloths(StructureGround ground) =>
        (ground.Sheathed?.Layers ?? [])
            .Select(l => new BillRow(
                "cloth",
                l.Cloth.Name,
                l.Name,
                l.LaidMm2 / 1e6,
                "m²",
                "on the hull, laps and wraps with it, trimmed"
            ))
            .Concat(
                (ground.Sheathed?.Rolls ?? []).Select(r => new BillRow(
                    "cloth off the roll",
                    $"{r.Cloth.Name}, {LengthText.ForPaper(r.RollWidthMm, ground.Planked.Job.Units)} wide",
                    "all of its layers",
                    r.ToOrderMm(ground.Planked.Job.Units) / 1000,
                    "m",
                    $"by the plan of cutting the rolls, up to a whole {(LengthUnits.IsMetric(ground.Planked.Job.Units) ? "10 mm" : "inch")} each; bought rolls are paid whole"
                )
                {
                    Cost = Paid(r),
                })
            );

    private static double? Paid(RollPlan plan)
    {
        CutRoll[] bought = [.. plan.Rolls.Where(r => !r.OnHand)];
        return bought.Length > 0 && bought.All(r => r.Roll.Price is not null)
            ? bought.Sum(r => r.Roll.Price)
            : null;
    }

    private static BillRow Filler(FillerTotal filler, LengthUnit unit) =>
        new(
            "filler",
            filler.Name,
            string.Join(" and ", filler.Rates.Select(r => Into(r.Into))),
            filler.Likely.Most,
            "kg",
            $"upper likely amount: {string.Join("; ", filler.Rates.Select(r => Rate(r, unit)))}, the job's; weigh a trial"
        )
        {
            Cost = filler.PricePerKg * filler.Likely.Most,
        };

    private static string Into(FillerInto into) =>
        into switch
        {
            FillerInto.Glue => "glue",
            FillerInto.Fillets => "fillets",
            FillerInto.Fairing => "fairing",
            _ => "glue, fillets and fairing",
        };

    private static string Rate(FillerSpec filler, LengthUnit unit)
    {
        string Of(double gramsPerKg) =>
            NumberText.Trimmed(
                gramsPerKg / AmountText.GramsPerKgPer(unit),
                LengthUnits.IsMetric(unit) ? 0 : 1
            );
        Estimate rate = filler.GramsPerKg;
        return $"{Of(rate.Usual)} ({Of(rate.Least)} to {Of(rate.Most)}) {AmountText.GramsPerKgUnit("it", unit)} of mix";
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
