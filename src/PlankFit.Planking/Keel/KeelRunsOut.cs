using MathNet.Numerics.RootFinding;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;

namespace PlankFit.Planking.Keel;

/// <summary>Where a keel layer ends or runs out forward.</summary>
internal static class KeelRunsOut
{
    private const double StepMm = 25;

    /// <summary>
    /// The x at which the layer begins: as given, or the aftermost at which the planks want it narrower than the least or rise more steeply than the most; to
    /// 0.001 mm. Null where it runs the whole bottom.
    /// </summary>
    public static double? At(KeelSpec spec, HullSurface hull, KeelLayerStanding keel)
    {
        if (keel.Spec.FromMm is { } given)
        {
            return given;
        }

        double? narrow = spec.LeastHalfWidthMm is { } least
            ? ForwardOf(hull, x => keel.WantedAt(x) - least)
            : null;
        double? steep = spec.MostDeadriseDegrees is { } most
            ? ForwardOf(hull, x => Math.Tan(most * Math.PI / 180) - SlopeAcross(keel, x))
            : null;
        return narrow > steep ? narrow : steep ?? narrow;
    }

    /// <summary>A place that the planks' outer face does not reach is as steep as can be.</summary>
    private static double SlopeAcross(KeelLayerStanding keel, double x) =>
        keel.PlanksOver(x, keel.WantedAt(x)) is { } at ? at.SlopeAcross : 100;

    /// <summary>The x up to which the room is wanting from the forward end on: a keel that wants it further aft as well is another matter.</summary>
    private static double? ForwardOf(HullSurface hull, Func<double, double> room)
    {
        double from = hull.Stations[0].PositionMm,
            to = hull.Stations[^1].PositionMm;
        if (room(from) >= 0)
        {
            return null;
        }

        double x = from;
        while (x < to && room(x) < 0)
        {
            x += StepMm;
        }

        return x >= to ? to : Brent.FindRoot(room, x - StepMm, x, 1e-3, 100);
    }
}
