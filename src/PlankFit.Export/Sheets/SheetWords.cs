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

    /// <summary>Without what goes for every sheet of its kind: "both sides, layer 1 inner".</summary>
    public static string Brief(string of) =>
        of.Split(", outer face up", StringSplitOptions.None)[0];

    /// <summary>What the head of a column says of its figures.</summary>
    public static string Unit(LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? LengthUnits.Name(unit)
        : unit == LengthUnit.Inch ? "inches"
        : "feet and inches";
}
