using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;

namespace PlankFit.Export.Solids;

/// <summary>Where a place of a plank as it lies flat is on the hull.</summary>
internal static class OnPlank
{
    /// <param name="flat">In the plank's own flat (s, n), mm.</param>
    /// <param name="outMm">From its middle outward, mm.</param>
    public static Vec3 At(Plank plank, Vec2 flat, double outMm) => Both(plank, flat, outMm).P;

    /// <summary>The same with the surface's outward normal there.</summary>
    public static (Vec3 P, Vec3 Normal) Both(Plank plank, Vec2 flat, double outMm)
    {
        SurfacePoint under = plank.Map.Under(flat);
        Vec3 p = under.P + (outMm * under.Normal);
        return plank.Side == Side.Port
            ? (p.MirroredInY(), under.Normal.MirroredInY())
            : (p, under.Normal);
    }
}
