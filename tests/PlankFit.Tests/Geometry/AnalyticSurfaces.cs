using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>
/// Surfaces in closed form, with exact first and second derivatives: what the kernel is held against.
/// Each has Normal = Side · (Du × Dv) / |Du × Dv|, Side being +1 or -1; the default side is stated on each.
/// Lengths mm, angles rad.
/// </summary>
public static class AnalyticSurfaces
{
    /// <summary>Assembles a surface point from the five derivatives; L, M, N follow from the normal's side.</summary>
    public static SurfacePoint Point(
        Vec3 p,
        Vec3 du,
        Vec3 dv,
        Vec3 duu,
        Vec3 duv,
        Vec3 dvv,
        int side
    )
    {
        Vec3 n = side * du.Cross(dv).Unit();
        return new(p, du, dv, n, duu.Dot(n), duv.Dot(n), dvv.Dot(n));
    }
}

/// <summary>P = Origin + u A + v B; A and B need be neither unit nor square. Default side: A × B.</summary>
public sealed record PlaneSurface(Vec3 Origin, Vec3 A, Vec3 B, int Side = 1) : ISurface
{
    public SurfacePoint At(double u, double v) =>
        AnalyticSurfaces.Point(
            Origin + (u * A) + (v * B),
            A,
            B,
            Vec3.Zero,
            Vec3.Zero,
            Vec3.Zero,
            Side
        );
}

/// <summary>
/// P = (u, R cos v, R sin v): u mm along the axis, which is x; v the angle. Default side: away from the axis, so that
/// the curvature around is -1/R. K = 0.
/// </summary>
public sealed record CylinderSurface(double Radius, int Side = -1) : ISurface
{
    public SurfacePoint At(double u, double v)
    {
        double c = Radius * Math.Cos(v),
            s = Radius * Math.Sin(v);
        return AnalyticSurfaces.Point(
            new(u, c, s),
            Vec3.UnitX,
            new(0, -s, c),
            Vec3.Zero,
            Vec3.Zero,
            new(0, -c, -s),
            Side
        );
    }
}

/// <summary>
/// P = v (sin a cos u, sin a sin u, cos a): u the angle about the axis, which is z, v the slant distance from the apex
/// at the origin, a the half angle. Default side: away from the axis. K = 0. Laid flat, the polar angle is u sin a.
/// </summary>
public sealed record ConeSurface(double HalfAngle, int Side = 1) : ISurface
{
    public SurfacePoint At(double u, double v)
    {
        double sa = Math.Sin(HalfAngle),
            ca = Math.Cos(HalfAngle);
        Vec3 ray = new(sa * Math.Cos(u), sa * Math.Sin(u), ca);
        Vec3 around = new(-sa * Math.Sin(u), sa * Math.Cos(u), 0);
        Vec3 inward = new(-sa * Math.Cos(u), -sa * Math.Sin(u), 0);
        return AnalyticSurfaces.Point(
            v * ray,
            v * around,
            ray,
            v * inward,
            around,
            Vec3.Zero,
            Side
        );
    }
}

/// <summary>
/// P = c(u) + v t(u), the tangent surface of the helix c = (a cos u, a sin u, b u), t its unit tangent, v &gt; 0.
/// Default side: Du × Dv. K = 0. Laid flat, the edge of regression is an arc of radius (a² + b²)/a.
/// </summary>
public sealed record HelixTangentSurface(double A, double B, int Side = 1) : ISurface
{
    public SurfacePoint At(double u, double v)
    {
        double w = Math.Sqrt((A * A) + (B * B)),
            c = Math.Cos(u),
            s = Math.Sin(u);
        Vec3 curve = new(A * c, A * s, B * u);
        Vec3 t = new(-A * s / w, A * c / w, B / w);
        Vec3 tu = new(-A * c / w, -A * s / w, 0);
        Vec3 tuu = new(A * s / w, -A * c / w, 0);
        return AnalyticSurfaces.Point(
            curve + (v * t),
            (w * t) + (v * tu),
            t,
            (w * tu) + (v * tuu),
            tu,
            Vec3.Zero,
            Side
        );
    }
}
