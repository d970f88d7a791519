using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Sheathing;

namespace PlankFit.Planking.Glue;

/// <summary>How much cloth lies on one side of the bottom.</summary>
/// <param name="Mm2">Of the cloth as it is trimmed, joins counted twice.</param>
/// <param name="TrimMm">Of its edges along keel, chine, transom and stem: those of the planks next to it.</param>
internal readonly record struct ClothSide(double Mm2, double TrimMm)
{
    /// <param name="at">The cloth's place among the layers.</param>
    public static ClothSide Of(Planked planked, int at, SheathedLayer cloth, Side side)
    {
        PlankLayerPlan nearest =
            planked.Layers.Take(at).OfType<PlankLayerPlan>().LastOrDefault()
            ?? planked.Layers.OfType<PlankLayerPlan>().First();
        var edges = EdgeLengths.Of(nearest.Of(side));
        return new(cloth.Of(side).LaidMm2, edges.Stem + edges.Chine + edges.Transom + edges.Keel);
    }
}
