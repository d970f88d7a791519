using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Sheathing;

namespace PlankFit.Planking.Glue;

/// <summary>How much cloth lies on one side of the bottom.</summary>
/// <param name="Mm2">Of the cloth as it is trimmed.</param>
/// <param name="TrimMm">Of its edges along keel, chine, transom and stem.</param>
internal readonly record struct ClothSide(double Mm2, double TrimMm)
{
    /// <summary>The area of the layer's surface, between those of the planks below and above it, with what goes past the centre line and round the edges.</summary>
    /// <param name="at">The cloth's place among the layers.</param>
    /// <param name="lies">How it ends; null where the job does not say, and then at the edges.</param>
    public static ClothSide Of(Planked planked, int at, SheathingSpec? lies, Side side)
    {
        PlankLayerPlan? below = planked.Layers.Take(at).OfType<PlankLayerPlan>().LastOrDefault(),
            above = planked.Layers.Skip(at + 1).OfType<PlankLayerPlan>().FirstOrDefault();
        PlankLayerPlan nearest = below ?? above!;
        double area = nearest.Of(side).AreaMm2;
        if (below is not null && above is not null)
        {
            area = (area + above.Of(side).AreaMm2) / 2;
        }

        var edges = EdgeLengths.Of(nearest.Of(side));
        double past = lies?.Keel switch
        {
            ClothAtKeel.PastCentreLine line => line.Mm,
            ClothAtKeel.ShortOfEdge edge => -edge.Mm,
            _ => 0,
        };
        return new(
            area
                + (past * edges.Keel)
                + ((lies?.RoundChineMm ?? 0) * edges.Chine)
                + ((lies?.RoundTransomMm ?? 0) * edges.Transom)
                + ((lies?.RoundStemMm ?? 0) * edges.Stem),
            edges.Stem + edges.Chine + edges.Transom + edges.Keel
        );
    }
}
