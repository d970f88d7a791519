using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Timber;

namespace PlankFit.Planking.Structure;

/// <summary>What each layer weighs and where its centre lies: planks as the timber has them, cloth with the resin in it, glue on its layer.</summary>
internal static class MassPlanner
{
    private static readonly Side[] BothSides = [Side.Starboard, Side.Port];

    public static ImmutableArray<LayerMass> Of(StructureGround ground)
    {
        ImmutableArray<LayerMass>.Builder masses = ImmutableArray.CreateBuilder<LayerMass>();
        for (int i = 0; i < ground.Planked.Layers.Length; i++)
        {
            LayerPlan layer = ground.Planked.Layers[i];
            masses.Add(layer is PlankLayerPlan planks ? Planks(ground, planks) : Cloth(ground, i));
            if (Glue(ground, i) is { } glue)
            {
                masses.Add(glue);
            }
        }

        return masses.ToImmutable();
    }

    private static LayerMass Planks(StructureGround ground, PlankLayerPlan layer)
    {
        LayerTimber? timber = ground.Timber?.Of(layer);
        return new(
            layer.Planks.Name,
            timber?.KgPerCubicMetre is not null
                ? $"{timber.Species.Title}, its density as in the list of timber"
                : "no species with a density is named",
            BothSides.Sum(s => layer.Of(s).AreaMm2),
            timber?.Both
        );
    }

    private static LayerMass Cloth(StructureGround ground, int at)
    {
        string name = ground.Planked.Layers[at].Spec.Name;
        if (ground.ClothOf(name) is not { } cloth)
        {
            return new(name, "no [[sheathing]] says what it is", 0, null);
        }

        double area = ground.LiesAs(name)!.LaidMm2,
            glass = cloth.MassGsm / 1000,
            mat = cloth.MatGsm / 1000,
            resin =
                Drinks(glass - mat, cloth.GlassContent.Usual)
                + Drinks(mat, cloth.MatGlassContent.Usual),
            kg = area / 1e6 * (glass + resin);
        return new(
            name,
            $"{cloth.Name}: its glass and as much resin as its usual glass content has",
            area,
            Centre(ground, at) is { } centre ? new(kg, centre, 0) : null
        );

        static double Drinks(double kg, double content) =>
            kg > 0 ? GlassInResin.ResinKgPerM2(kg, content) : 0;
    }

    /// <summary>What stays of the glue under a layer, waste not among it.</summary>
    private static LayerMass? Glue(StructureGround ground, int at)
    {
        string name = ground.Planked.Layers[at].Spec.Name;
        AmountLine[] lines =
        [
            .. (ground.Glue?.Amounts ?? []).Where(a =>
                a.Where == name
                && a.Use
                    is GlueUse.BetweenLayers
                        or GlueUse.Seams
                        or GlueUse.Behind
                        or GlueUse.Priming
                        or GlueUse.Weave
            ),
        ];
        double kg = lines.Sum(a =>
            (a.Kg.Usual + a.Fillers.Sum(f => f.Kg.Usual)) / (1 + a.Mix.Waste)
        );
        return kg > 0 && Centre(ground, at) is { } centre
            ? new(
                $"{name}: glue and coats",
                "usual film, filler, priming and weave, without what is wasted",
                lines.Max(a => a.AreaMm2),
                new(kg, centre, 0)
            )
            : null;
    }

    /// <summary>Of a layer's area: its planks' centre, or of a cloth midway between those of the planks below and above it.</summary>
    private static Vec3? Centre(StructureGround ground, int at)
    {
        Weight?[] near =
        [
            Of(ground.Planked.Layers.Take(at + 1).OfType<PlankLayerPlan>().LastOrDefault()),
            Of(ground.Planked.Layers.Skip(at).OfType<PlankLayerPlan>().FirstOrDefault()),
        ];
        Vec3[] centres = [.. near.OfType<Weight>().Select(w => w.Centre)];
        return centres.Length == 0
            ? null
            : centres.Aggregate(Vec3.Zero, (sum, c) => sum + c) / centres.Length;

        Weight? Of(PlankLayerPlan? layer) => layer is null ? null : ground.Timber?.Of(layer)?.Both;
    }
}
