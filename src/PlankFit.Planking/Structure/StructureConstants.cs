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
                    Modulus(w.Modulus!.Value, ground.Planked.Job.Units),
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
            .. ground.Sheathed is null
                ? []
                : new ConstantFrom[]
                {
                    new(
                        "glass, resin",
                        $"{Modulus(spec.Fibres.FibreMPa, ground.Planked.Job.Units)}, {Modulus(spec.Fibres.ResinMPa, ground.Planked.Job.Units)}",
                        spec.Fibres == new FibreSpec() ? "from memory" : "the job"
                    ),
                },
            new(
                "wood in rolling shear",
                Modulus(WoodRatios.RollingMPa, ground.Planked.Job.Units),
                "from memory; in the coupon's shear alone"
            ),
        ];

    private static IEnumerable<ConstantFrom> Cloths(StructureGround ground, PlyMaker maker) =>
        ground
            .Planked.Layers.OfType<ClothLayerPlan>()
            .Where(l => ground.ClothOf(l.Cloth.Name) is not null)
            .SelectMany(l =>
                maker
                    .Of(
                        ground.ClothOf(l.Cloth.Name)!,
                        l.Cloth.ThicknessMm,
                        ClothLies.Of(ground.LiesAs(l.Cloth.Name)!)
                    )
                    .GroupBy(p => p.Material)
                    .Select(p => new ConstantFrom(
                        $"{l.Cloth.Name}, {LengthText.FormatExact(l.Cloth.ThicknessMm, ground.Planked.Job.Units)}: a set of its threads along, across, in shear",
                        string.Join(
                            ", ",
                            new[] { p.Key.E1, p.Key.E2, p.Key.G12 }.Select(m =>
                                Modulus(m, ground.Planked.Job.Units)
                            )
                        ),
                        "mixtures and Halpin-Tsai from glass, resin and the job's glass content (method from memory)"
                    ))
            );

    /// <summary>To three figures: 13400 MPa, 1.94 million psi.</summary>
    private static string Modulus(double value, LengthUnit unit)
    {
        const double mpsi = 6894.757293168361;
        return LengthUnits.IsMetric(unit)
            ? NumberText.Trimmed(Math.Round(value / 10) * 10, 0) + " MPa"
            : NumberText.Trimmed(value / mpsi, value < mpsi / 10 ? 4 : 2) + " million psi";
    }
}
