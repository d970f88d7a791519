using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Solids;

/// <summary>Where the master plank of a skin is asked for and where it was laid, and the line along the hull on which it can be moved.</summary>
/// <param name="Middle">The middle of the panel from forward aft, to starboard: where a master crosses it; x, y, z, mm.</param>
/// <param name="Across">The master's own line as it was laid, to starboard.</param>
/// <param name="Why">Why it was laid elsewhere; empty where it was not.</param>
public sealed record MasterPlace(
    PlankId Plank,
    double AskedMm,
    double LaidMm,
    ImmutableArray<ImmutableArray<double>> Middle,
    ImmutableArray<ImmutableArray<double>> Across,
    string Why
)
{
    private const int MiddlePoints = 80,
        AcrossPoints = 12;

    /// <summary>Nearer than this it was laid where it was asked for, mm.</summary>
    private const double SameMm = 0.05;

    /// <param name="unit">In which it is told.</param>
    /// <returns>Null where the layer has no master any more, all of its planks being held by what is sawn.</returns>
    public static MasterPlace? Of(BottomPlan plan, PlankLayerPlan layer, LengthUnit unit)
    {
        if (layer.Starboard.FirstOrDefault(p => p.Number == layer.MasterNumber) is not { } master)
        {
            return null;
        }

        LoftedSurface hull = plan.Hull.Surface;
        double half = layer.Spec.ThicknessMm / 2;
        Plank on = master.OnHull;
        (double from, double to) = (on.FlatNet.Min(p => p.X), on.FlatNet.Max(p => p.X));
        return new(
            master.Id,
            layer.Master.AskedMm,
            layer.Master.AskedMm + layer.MasterShiftMm,
            [
                .. Enumerable
                    .Range(0, MiddlePoints + 1)
                    .Select(i =>
                    {
                        double u = hull.UFrom + ((hull.UTo - hull.UFrom) * i / MiddlePoints);
                        SurfacePoint at = layer.Surface.At(u, hull.UpperV(u) / 2);
                        return Numbers(at.P + (half * at.Normal));
                    }),
            ],
            [
                .. Enumerable
                    .Range(0, AcrossPoints + 1)
                    .Select(i =>
                        Numbers(
                            OnPlank.At(on, new(from + ((to - from) * i / AcrossPoints), 0), half)
                        )
                    ),
            ],
            Math.Abs(layer.MasterShiftMm) < SameMm ? "" : Reason(unit, layer)
        );
    }

    /// <summary>x, y, z to a tenth of a millimetre.</summary>
    private static ImmutableArray<double> Numbers(Vec3 p) =>
        [Math.Round(p.X, 1), Math.Round(p.Y, 1), Math.Round(p.Z, 1)];

    private static string Reason(LengthUnit unit, PlankLayerPlan layer)
    {
        string by = LengthText.ForPaper(Math.Abs(layer.MasterShiftMm), unit),
            way = layer.MasterShiftMm > 0 ? "aft" : "forward";
        return layer.Planks.Stagger is null
            ? $"{by} {way} of it, so that no plank at a corner is a sliver"
            : $"{by} {way} of it, so that its seams keep off those below and no plank at a corner is a sliver";
    }
}
