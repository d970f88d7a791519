using PlankFit.Geometry.Primitives;

namespace PlankFit.Geometry.Surfaces;

/// <summary>
/// The surface at a constant distance from another along its normal. Exact, with the base surface's own derivatives:
/// Pu = Su + z nu, second form L − z nu·nu (Weingarten). Needs no third derivatives, which jump at a spline's knots.
/// Curvatures become k / (1 − z k), k positive towards the normal. Source: do Carmo, ch. 3-5 (from memory).
/// </summary>
public sealed class ParallelSurface(ISurface parent, double offsetMm) : ISurface
{
    public ISurface Parent => parent;

    /// <summary>Distance along the parent's normal, mm; negative is inward.</summary>
    public double OffsetMm => offsetMm;

    /// <summary>A point of the parallel surface; where 1 − z k is not positive the surface has folded and its normal no longer means anything.</summary>
    public SurfacePoint At(double u, double v)
    {
        SurfacePoint s = parent.At(u, v);
        double e = s.E,
            f = s.F,
            g = s.G,
            one = 1 / ((e * g) - (f * f));
        Vec3 nu =
            ((((f * s.M) - (g * s.L)) * one) * s.Du) + ((((f * s.L) - (e * s.M)) * one) * s.Dv);
        Vec3 nv =
            ((((f * s.N) - (g * s.M)) * one) * s.Du) + ((((f * s.M) - (e * s.N)) * one) * s.Dv);
        double z = offsetMm;
        return new(
            s.P + (z * s.Normal),
            s.Du + (z * nu),
            s.Dv + (z * nv),
            s.Normal,
            s.L - (z * nu.Dot(nu)),
            s.M - (z * nu.Dot(nv)),
            s.N - (z * nv.Dot(nv))
        );
    }
}
