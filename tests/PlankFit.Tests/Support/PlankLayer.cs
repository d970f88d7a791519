using PlankFit.Planking.Layers;

namespace PlankFit.Tests.Support;

/// <summary>A layer of diagonal planks by its figures, in the order in which the tests give them.</summary>
internal static class PlankLayer
{
    public static PlankLayerSpec Of(
        string name,
        double thicknessMm,
        double widthMm,
        Heads heads,
        double angleDegrees,
        double? masterMm,
        Hold hold,
        double driftDegrees,
        double gapMm,
        double? stagger
    ) =>
        new(
            name,
            thicknessMm,
            new(widthMm, gapMm),
            new(heads, angleDegrees, masterMm, hold, driftDegrees, stagger)
        );
}
