using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Sheets;

/// <summary>The words of the title block.</summary>
internal static class SheetWords
{
    public static string Of(PlankLayerPlan layer) => $"layer {layer.Code} {layer.Spec.Name}";

    public static string Of(Side side, PlankLayerPlan layer) =>
        $"{PlankWords.Of(side)}, {Of(layer)}, outer face up";

    /// <summary>What the head of a column says of its figures.</summary>
    public static string Unit(LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? LengthUnits.Name(unit)
        : unit == LengthUnit.Inch ? "inches"
        : "feet and inches";
}
