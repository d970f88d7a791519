using System.Globalization;
using PlankFit.Export.Tables;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;

namespace PlankFit.Export.Planks;

/// <summary>A layer's number in a table: plain for the bottom's, with its letter for another panel's.</summary>
internal static class LayerNumber
{
    /// <summary>Of the layer of a plank.</summary>
    public static TableCell Of(PlankId plank) =>
        plank.Panel == PlankId.Bottom
            ? plank.Layer
            : string.Create(CultureInfo.InvariantCulture, $"{plank.Panel}{plank.Layer}");

    public static TableCell Of(PlankLayerPlan layer) =>
        layer.Panel.HasKeel ? layer.Number : layer.Code;
}
