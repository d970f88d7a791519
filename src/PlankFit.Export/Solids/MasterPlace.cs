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
        (double from, double to) = OwnLine(on.FlatNet);
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

    /// <summary>Where the plank's own line, y = 0 of its flat shape, enters and leaves it: corners reach further.</summary>
    private static (double From, double To) OwnLine(ImmutableArray<Vec2> net)
    {
        double[] met =
        [
            .. net.Select((a, i) => (A: a, B: net[(i + 1) % net.Length]))
                .Where(e => e.A.Y * e.B.Y <= 0 && e.A.Y != e.B.Y)
                .Select(e => e.A.X + (e.A.Y / (e.A.Y - e.B.Y) * (e.B.X - e.A.X))),
        ];
        // A sawn plank may lie beside the line of its place.
        return met.Length > 1 ? (met.Min(), met.Max()) : (net.Min(p => p.X), net.Max(p => p.X));
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
