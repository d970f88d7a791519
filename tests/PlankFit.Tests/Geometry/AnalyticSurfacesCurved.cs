using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>
/// P = R (cos v cos u, cos v sin u, sin v): u the longitude, v the latitude. Default side: away from the centre.
/// K = 1/R².
/// </summary>
public sealed record SphereSurface(double Radius, int Side = 1) : ISurface
{
    public SurfacePoint At(double u, double v)
    {
        double r = Radius,
            cu = Math.Cos(u),
            su = Math.Sin(u),
            cv = Math.Cos(v),
            sv = Math.Sin(v);
        return AnalyticSurfaces.Point(
            r * new Vec3(cv * cu, cv * su, sv),
            r * new Vec3(-cv * su, cv * cu, 0),
            r * new Vec3(-sv * cu, -sv * su, cv),
            r * new Vec3(-cv * cu, -cv * su, 0),
            r * new Vec3(sv * su, -sv * cu, 0),
            r * new Vec3(-cv * cu, -cv * su, -sv),
            Side
        );
    }
}

/// <summary>
/// P = ((R + r cos u) cos v, (R + r cos u) sin v, r sin u): u around the tube, v around the axis, which is z.
/// Default side: away from the tube's middle. K = cos u / (r (R + r cos u)).
/// </summary>
public sealed record TorusSurface(double Major, double Minor, int Side = -1) : ISurface
{
    public SurfacePoint At(double u, double v)
    {
        double r = Minor,
            q = Major + (r * Math.Cos(u)),
            cu = Math.Cos(u),
            su = Math.Sin(u),
            cv = Math.Cos(v),
            sv = Math.Sin(v);
        return AnalyticSurfaces.Point(
            new(q * cv, q * sv, r * su),
            new(-r * su * cv, -r * su * sv, r * cu),
            new(-q * sv, q * cv, 0),
            new(-r * cu * cv, -r * cu * sv, -r * su),
            new(r * su * sv, -r * su * cv, 0),
            new(-q * cv, -q * sv, 0),
            Side
        );
    }
}

/// <summary>
/// The hyperbolic paraboloid P = (u, v, v (Slope + k u)), k the twist in 1/mm: straight sections across and along.
/// Default side: +z. K = -k²/W⁴, W² = 1 + k²v² + (Slope + k u)².
/// </summary>
public sealed record HyparSurface(double Twist, double Slope = 0, int Side = 1) : ISurface
{
    public SurfacePoint At(double u, double v)
    {
        double m = Slope + (Twist * u);
        return AnalyticSurfaces.Point(
            new(u, v, v * m),
            new(1, 0, Twist * v),
            new(0, 1, m),
            Vec3.Zero,
            new(0, 0, Twist),
            Vec3.Zero,
            Side
        );
    }
}

/// <summary>
/// P = (u, v cos(tau u), v sin(tau u)): u along the axis, which is x, v square to it, tau the twist in rad/mm.
/// Default side: +z at u = 0. K = -tau²/(1 + tau²v²)².
/// </summary>
public sealed record HelicoidSurface(double Twist, int Side = 1) : ISurface
{
    public SurfacePoint At(double u, double v)
    {
        double t = Twist,
            c = Math.Cos(t * u),
            s = Math.Sin(t * u);
        return AnalyticSurfaces.Point(
            new(u, v * c, v * s),
            new(1, -t * v * s, t * v * c),
            new(0, c, s),
            new(0, -t * t * v * c, -t * t * v * s),
            new(0, -t * s, t * c),
            Vec3.Zero,
            Side
        );
    }
}

/// <summary>
/// A surface moved: each point goes to Shift + X x + Y y + Z z, with X, Y, Z an orthonormal frame. A left-handed frame
/// mirrors the surface; the normal is carried along, so the outer side stays the outer side and L, M, N do not change.
/// </summary>
public sealed record MovedSurface(ISurface Surface, Vec3 X, Vec3 Y, Vec3 Z, Vec3 Shift) : ISurface
{
    /// <summary>Turned by the angle about an axis through the origin (Rodrigues), then shifted.</summary>
    public static MovedSurface Turned(ISurface surface, Vec3 axis, double angle, Vec3 shift)
    {
        Vec3 k = axis.Unit();
        Vec3 Turn(Vec3 a) =>
            (Math.Cos(angle) * a)
            + (Math.Sin(angle) * k.Cross(a))
            + ((1 - Math.Cos(angle)) * k.Dot(a) * k);
        return new(surface, Turn(Vec3.UnitX), Turn(Vec3.UnitY), Turn(Vec3.UnitZ), shift);
    }

    /// <summary>Mirrored in the plane y = 0.</summary>
    public static MovedSurface Mirrored(ISurface surface) =>
        new(surface, Vec3.UnitX, -Vec3.UnitY, Vec3.UnitZ, Vec3.Zero);

    public Vec3 Carry(Vec3 a) => (a.X * X) + (a.Y * Y) + (a.Z * Z);

    public SurfacePoint At(double u, double v)
    {
        SurfacePoint s = Surface.At(u, v);
        return s with
        {
            P = Shift + Carry(s.P),
            Du = Carry(s.Du),
            Dv = Carry(s.Dv),
            Normal = Carry(s.Normal),
        };
    }
}
