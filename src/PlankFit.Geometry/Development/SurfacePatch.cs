using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Development;

/// <summary>
/// A panel on a surface: u from UFrom to UTo, v from Lower(u) to Upper(u). At either end the two edges may meet in a
/// point. Both edge functions are smooth and are asked only between UFrom and UTo; the surface is asked a little past them.
/// </summary>
public sealed record SurfacePatch(
    ISurface Surface,
    double UFrom,
    double UTo,
    Func<double, double> Lower,
    Func<double, double> Upper
)
{
    public double URange => UTo - UFrom;

    /// <summary>The v that lies the given part of the way from the lower edge (0) to the upper (1).</summary>
    public double V(double u, double across)
    {
        double low = Lower(u);
        return low + (across * (Upper(u) - low));
    }

    public SurfacePoint At(double u, double across) => Surface.At(u, V(u, across));

    /// <summary>+1 where Du × Dv points to the outer side, -1 where it points to the inner.</summary>
    public int Handedness
    {
        get
        {
            SurfacePoint s = At(UFrom + (0.5 * URange), 0.5);
            return s.Du.Cross(s.Dv).Dot(s.Normal) > 0 ? 1 : -1;
        }
    }

    /// <summary>Whether the two edges meet at this u, nearer to each other than the given chord in mm.</summary>
    public bool ClosesAt(double u, double withinMm) =>
        Surface.At(u, Lower(u)).P.ChordTo(Surface.At(u, Upper(u)).P) < withinMm;

    /// <summary>
    /// Slope of an edge function, dv/du, by second-order differences that stay inside the panel; a straight edge comes
    /// out exact but for rounding.
    /// </summary>
    public double Slope(Func<double, double> edge, double u)
    {
        double h = 1e-5 * URange;
        if (u - h < UFrom)
        {
            return ((-3 * edge(u)) + (4 * edge(u + h)) - edge(u + (2 * h))) / (2 * h);
        }

        return u + h > UTo
            ? ((3 * edge(u)) - (4 * edge(u - h)) + edge(u - (2 * h))) / (2 * h)
            : (edge(u + h) - edge(u - h)) / (2 * h);
    }

    internal EdgePoint OnLower(double u) => On(Lower, u);

    internal EdgePoint OnUpper(double u) => On(Upper, u);

    private EdgePoint On(Func<double, double> edge, double u)
    {
        SurfacePoint s = Surface.At(u, edge(u));
        return new(s.P, s.Du + (Slope(edge, u) * s.Dv), s.Normal);
    }
}

/// <summary>A point of a panel's edge, the rate of its position with u, and the surface's normal there.</summary>
internal readonly record struct EdgePoint(Vec3 P, Vec3 Rate, Vec3 Normal);
