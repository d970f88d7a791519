using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Structure;

/// <summary>At which angle the planks of a layer lie at a section of the hull.</summary>
internal static class PlankAngles
{
    private const double StepMm = 0.5;
    private const double WithinMm = 1e-3;

    /// <summary>
    /// Degrees from the line along the hull, aft, towards the chine, 0 to 180, in the surface: of the plank of starboard whose own line crosses the section at x nearest
    /// to a half-breadth. Null where none crosses it.
    /// </summary>
    public static double? At(PlankLayerPlan layer, double xMm, double halfBreadthMm)
    {
        (double Off, double Degrees)? best = null;
        foreach (Plank plank in layer.Starboard)
        {
            PlankMap map = plank.OnHull.Map;
            double from = plank.OnHull.FlatNet.Min(p => p.X),
                to = plank.OnHull.FlatNet.Max(p => p.X);
            if ((XAt(from) - xMm) * (XAt(to) - xMm) > 0)
            {
                continue;
            }

            double sign = Math.Sign(XAt(to) - XAt(from));
            while (to - from > WithinMm)
            {
                double middle = (from + to) / 2;
                (from, to) = sign * (XAt(middle) - xMm) < 0 ? (middle, to) : (from, middle);
            }

            double off = Math.Abs(Math.Abs(map.Measured(new(from, 0)).Point.Y) - halfBreadthMm);
            if (best is null || off < best.Value.Off)
            {
                best = (off, Degrees(map, from));
            }

            double XAt(double s) => map.Measured(new(s, 0)).Point.X;
        }

        return best?.Degrees;
    }

    private static double Degrees(PlankMap map, double s)
    {
        Vec3 grain = map.Grain(new(s, 0)),
            across = map.Measured(new(s, StepMm)).Point - map.Measured(new(s, -StepMm)).Point;
        Vec3 normal = grain.Cross(across).Unit(),
            along = (Vec3.UnitX - (Vec3.UnitX.Dot(normal) * normal)).Unit(),
            girth = normal.Cross(along);
        girth = girth.Y < 0 ? -girth : girth;
        // A plank's flat shape runs outboard.
        return Math.Atan2(grain.Dot(girth), grain.Dot(along)) * 180 / Math.PI;
    }
}
