using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Structure;

/// <summary>What stiffness and mass lack.</summary>
internal static class StructureFindings
{
    /// <summary>By more than this a cloth layer's thickness departs from what its glass and resin come to: a proposal, no source.</summary>
    private const double ThicknessPart = 0.3;

    public static IEnumerable<Finding> Of(
        StructureSpec spec,
        StructureGround ground,
        PlyMaker maker
    )
    {
        foreach (PlankLayerPlan layer in ground.Planked.PlankLayers)
        {
            if (ground.WoodOf(layer) is not { } wood || maker.Of(wood) is null)
            {
                yield return new(
                    Severity.Warning,
                    Subject.OfLayer(layer.Planks.Name),
                    "no species with a known stiffness is named for it, in the layer or in [timber]: no stiffness is reckoned"
                )
                {
                    Rank = Rank.Know,
                };
            }
        }

        foreach (ClothLayerPlan layer in ground.Planked.Layers.OfType<ClothLayerPlan>())
        {
            if (ground.ClothOf(layer.Cloth.Name) is not { } cloth)
            {
                yield return new(
                    Severity.Note,
                    Subject.OfLayer(layer.Cloth.Name),
                    "no [[sheathing]] says what it is: it counts for nothing in stiffness and mass"
                );
            }
            else if (
                Thickness(cloth) is var mm
                && Math.Abs((layer.Cloth.ThicknessMm / mm) - 1) > ThicknessPart
            )
            {
                yield return new(
                    Severity.Note,
                    Subject.OfLayer(layer.Cloth.Name),
                    $"{LengthText.Thin(layer.Cloth.ThicknessMm, ground.Planked.Job.Units)} thick, and {cloth.Name} at its usual glass content comes to {LengthText.Thin(mm, ground.Planked.Job.Units)}: measure a coupon; keel and planks go by the layer's thickness"
                );
            }
        }

        if (spec.PressureMPa is null)
        {
            yield return new(
                Severity.Note,
                "[structure]",
                "no pressure is given: stiffness is compared and no panel is bent"
            );
        }
    }

    private static double Thickness(ClothSpec cloth) =>
        Part(cloth.MassGsm - cloth.MatGsm, cloth.GlassContent.Usual)
        + Part(cloth.MatGsm, cloth.MatGlassContent.Usual);

    private static double Part(double gsm, double content) =>
        gsm > 0
            ? GlassInResin.ThicknessMm(
                gsm / 1000,
                content,
                GlassInResin.GlassKgPerLitre,
                PlyMaker.EpoxyKgPerLitre
            )
            : 0;
}
