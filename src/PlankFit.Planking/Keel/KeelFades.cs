using MathNet.Numerics.RootFinding;

namespace PlankFit.Planking;

/// <summary>Where a keel layer ends or fades forward.</summary>
internal static class KeelFades
{
    private const double StepMm = 25;

    /// <summary>The fade under a layer of planks; null where they meet their keel layer all along.</summary>
    public static KeelFade? Under(Job job, HullSurface hull, PlankLayerSpec layer, Side side)
    {
        var stack = KeelStack.Of(job, hull, side);
        if (stack.IsEmpty)
        {
            return null;
        }

        KeelLayerStanding keel = stack.FirstOrDefault(k => k.Planks.Name == layer.Name) ?? stack[0];
        return At(job.Keel, hull, keel) is { } x ? new(x, job.Keel.LeftLongMm) : null;
    }

    /// <summary>The x at which the layer begins: as given, or the aftermost at which the planks want it narrower than the least; to 0.001 mm.</summary>
    public static double? At(KeelSpec spec, HullSurface hull, KeelLayerStanding keel)
    {
        if (keel.Spec.FromMm is { } given)
        {
            return given;
        }

        if (spec.LeastHalfWidthMm is not { } least)
        {
            return null;
        }

        double from = hull.Stations[0].PositionMm,
            to = hull.Stations[^1].PositionMm;
        double Over(double x) => keel.WantedAt(x) - least;

        // Only what runs on to the forward end is a fade: a keel that is narrow aft as well is another matter.
        if (Over(from) >= 0)
        {
            return null;
        }

        double x = from;
        while (x < to && Over(x) < 0)
        {
            x += StepMm;
        }

        return x >= to ? to : Brent.FindRoot(Over, x - StepMm, x, 1e-3, 100);
    }
}
