using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Story;

/// <summary>What an end's bevel comes from: how the side that it meets stands.</summary>
internal static class StorySides
{
    private const string Square = "the edge is carried square to the surface";

    public static string Of(Job job, PlankLayerPlan layer, PlankEnd end)
    {
        if (end.At != PanelEdge.Lower || !layer.Panel.HasKeel)
        {
            return Square;
        }

        // Planks that no keel layer names meet the first one's side, carried on.
        KeelLayerSpec? keel =
            job.Keel.Layers.FirstOrDefault(k => k.Meets == layer.Planks.Name)
            ?? job.Keel.Layers.FirstOrDefault();
        return keel switch
        {
            null => job.Hull.KeelSide == KeelSide.Plumb ? "the keel's side is plumb" : Square,
            { Side: KeelLayerSide.SquareToPlank } =>
                $"the side of {keel.Name} goes through its outer edge square to the planks",
            { Side: KeelLayerSide.Leaning(var degrees) } =>
                $"the side of {keel.Name} leans {NumberText.Trimmed(Math.Abs(degrees), 1)}° off plumb",
            _ => $"the side of {keel.Name} is plumb",
        };
    }
}
