using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Regions;
using PlankFit.Planking.Seams;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Laying;

/// <summary>Whether a layer has room on the hull, and whether its master plank runs from keel to chine.</summary>
internal static class LayerChecks
{
    /// <summary>What stands in the layer's way on this surface; null where it has room.</summary>
    public static Finding? Room(
        LoftedSurface surface,
        StackedLayer layer,
        Panel panel,
        LengthUnit unit
    ) =>
        SidePlanner.TooThick(surface, layer, panel, unit)
        ?? (
            layer.Spec is PlankLayerSpec planks
                ? SidePlanner.TooWide(surface, planks, panel, unit)
                : null
        );

    /// <summary>Why planks cannot be laid from the layer's master plank; null where they can, or where that shows itself only when they are laid.</summary>
    public static Finding? Master(SideGround ground, StackedLayer layer)
    {
        if (layer.Spec is not PlankLayerSpec spec)
        {
            return null;
        }

        string key = "layer.angle";
        try
        {
            (LayerRegion region, Tracing tracing) = LayerPlanner.Ground(ground, layer, spec);
            if (spec.MasterMm is { } x && region.MiddleAt(x) is null)
            {
                key = "layer.master";
            }

            Seam master = MasterLine.Find(region, spec, 0, tracing);
            key = "layer.width";
            SeamFamily.Beside(region, spec, master, -1, tracing);
            SeamFamily.Beside(region, spec, master, 1, tracing);
            return null;
        }
        catch (JobFaultException fault)
        {
            return fault.Finding(ground.Job.Units) with
            {
                About = Subject.OfLayer(spec.Name) with { Key = key },
            };
        }
        catch (Exception e) when (LostPlace.Is(e))
        {
            return null;
        }
    }
}
