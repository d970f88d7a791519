using System.Collections.Immutable;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Wood;

namespace PlankFit.Planking.Structure;

/// <summary>Every constant that stiffness goes by, with where it comes from.</summary>
internal static class StructureConstants
{
    public static ImmutableArray<ConstantFrom> Of(
        StructureSpec spec,
        StructureGround ground,
        PlyMaker maker
    ) =>
        [
            .. ground
                .Planked.PlankLayers.Select(ground.WoodOf)
                .OfType<Species>()
                .Distinct()
                .Where(w => w.Modulus is not null)
                .Select(w => new ConstantFrom(
                    $"{w.Title}, along the grain",
                    MPa(w.Modulus!.Value),
                    w.Modulus.Source
                )),
            new(
                "wood across the grain, in shear, Poisson's ratio",
                $"{NumberText.Trimmed(spec.Wood.Across, 3)}, {NumberText.Trimmed(spec.Wood.Shear, 3)} of that, {NumberText.Trimmed(spec.Wood.Poisson, 3)}",
                spec.Wood == new WoodRatios()
                    ? "Douglas-fir, tangential: Wood Handbook, second hand"
                    : "the job"
            ),
            .. Cloths(ground, maker),
            new(
                "glass, resin",
                $"{MPa(spec.Fibres.FibreMPa)}, {MPa(spec.Fibres.ResinMPa)}",
                spec.Fibres == new FibreSpec() ? "from memory" : "the job"
            ),
            new(
                "wood in rolling shear",
                MPa(WoodRatios.RollingMPa),
                "from memory; in the coupon's shear alone"
            ),
        ];

    private static IEnumerable<ConstantFrom> Cloths(StructureGround ground, PlyMaker maker) =>
        ground
            .Planked.Layers.OfType<ClothLayerPlan>()
            .Where(l => ground.ClothOf(l.Cloth.Name) is not null)
            .SelectMany(l =>
                maker
                    .Of(ground.ClothOf(l.Cloth.Name)!, l.Cloth.ThicknessMm)
                    .GroupBy(p => p.Material)
                    .Select(p => new ConstantFrom(
                        $"{l.Cloth.Name}, {NumberText.Trimmed(l.Cloth.ThicknessMm, 2)} mm: a set of its threads along, across, in shear",
                        $"{MPa(p.Key.E1)}, {MPa(p.Key.E2)}, {MPa(p.Key.G12)}",
                        "mixtures and Halpin-Tsai from glass, resin and the job's glass content (method from memory)"
                    ))
            );

    private static string MPa(double value) =>
        NumberText.Trimmed(Math.Round(value / 10) * 10, 0) + " MPa";
}
