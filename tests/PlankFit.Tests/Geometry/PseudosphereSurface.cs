using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>
/// The tractrix turned about its line: P = R (sech t cos v, sech t sin v, t − tanh t), t &gt; 0. Default side: away from the axis. K = −1/R² everywhere.
/// </summary>
public sealed record PseudosphereSurface(double Radius, int Side = -1) : ISurface
{
    public SurfacePoint At(double t, double v)
    {
        double h = 1 / Math.Cosh(t),
            th = Math.Tanh(t),
            c = Math.Cos(v),
            s = Math.Sin(v),
            r = Radius;
        Vec3 Turned(double rho, double z) => new(r * rho * c, r * rho * s, r * z);
        Vec3 Around(double rho) => new(-r * rho * s, r * rho * c, 0);
        return AnalyticSurfaces.Point(
            Turned(h, t - th),
            Turned(-h * th, th * th),
            Around(h),
            Turned(h * ((th * th) - (h * h)), 2 * th * h * h),
            Around(-h * th),
            Turned(-h, 0),
            Side
        );
    }
}
