namespace PlankFit.Geometry.Surfaces;

/// <summary>
/// A regular surface in two parameters. The parameters' units are the surface's own; its points are in millimetres.
/// The normal is on the side that the surface calls outer.
/// </summary>
public interface ISurface
{
    /// <summary>
    /// Position, tangents and second fundamental form at (u, v). Defined a little past the surface's edges as well;
    /// how far is the caller's to judge (<see cref="SurfacePoint.Normal"/> tells).
    /// </summary>
    SurfacePoint At(double u, double v);
}

/// <summary>The parameters of a point on a surface.</summary>
public readonly record struct Uv(double U, double V)
{
    public static Uv operator +(Uv a, Uv b) => new(a.U + b.U, a.V + b.V);

    public static Uv operator -(Uv a, Uv b) => new(a.U - b.U, a.V - b.V);

    public static Uv operator *(double k, Uv a) => new(k * a.U, k * a.V);
}
