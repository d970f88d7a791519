using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Seams;

/// <summary>A neighbour of a geodesic as a sum of its two Jacobi fields: signed distance t(s) = Alpha a(s) + Beta b(s), mm, positive to the left.</summary>
internal readonly record struct Neighbour(double Alpha, double Beta)
{
    public double At(GeodesicPoint p) => (Alpha * p.A) + (Beta * p.B);

    public double Rate(GeodesicPoint p) => (Alpha * p.ARate) + (Beta * p.BRate);

    public static Neighbour operator *(double k, Neighbour n) => new(k * n.Alpha, k * n.Beta);
}

/// <summary>
/// Laying the next line of a family. The distance to a near geodesic is a Jacobi field of the line at hand; the combination nearest to what is wished is
/// found by least squares, and the line is then traced for itself, so that errors of the second order do not add up.
/// Evolution of geodesic patterns: Pottmann et al. 2010, Geodesic patterns (abstract read; details from memory).
/// </summary>
internal static class Neighbours
{
    private const int Samples = 24;

    /// <summary>Least squares of alpha a + beta b to a wished distance over [from, to].</summary>
    public static Neighbour Fit(Geodesic line, double from, double to, Func<double, double> wished)
    {
        double aa = 0,
            ab = 0,
            bb = 0,
            ay = 0,
            by = 0;
        for (int i = 0; i <= Samples; i++)
        {
            GeodesicPoint p = line.At(from + ((to - from) * i / Samples));
            double y = wished(p.S);
            (aa, ab, bb) = (aa + (p.A * p.A), ab + (p.A * p.B), bb + (p.B * p.B));
            (ay, by) = (ay + (p.A * y), by + (p.B * y));
        }

        double det = (aa * bb) - (ab * ab);
        return new(((bb * ay) - (ab * by)) / det, ((aa * by) - (ab * ay)) / det);
    }

    /// <summary>The greatest |t| over [from, to].</summary>
    public static double Greatest(Geodesic line, Neighbour n, double from, double to)
    {
        return Peak.Of(s => Math.Abs(n.At(line.At(s))), from, to, Samples);
    }

    /// <summary>Traces the neighbour: from the foot at s, square across by t(s), turned by the field's rate; both ways until it is well outside the region.</summary>
    public static Geodesic Trace(
        LayerRegion region,
        Geodesic line,
        Neighbour n,
        double footS,
        Tracing tracing
    )
    {
        GeodesicPoint foot = line.At(footS);
        SurfacePoint under = region.Surface.At(foot.Uv.U, foot.Uv.V);
        double t = n.At(foot);
        (Uv start, Vec3 across) = GeodesicTracing.Shoot(
            region.Surface,
            foot.Uv,
            under.Left(foot.Tangent),
            t,
            tracing.PerpendicularStepMm
        );
        SurfacePoint there = region.Surface.At(start.U, start.V);
        Vec3 left = there.UnitTangent(across),
            along = left.Cross(there.Normal);
        double stretch = 1 - (under.GaussCurvature * t * t / 2);
        return tracing.Line(region, start, (stretch * along) + (n.Rate(foot) * left));
    }
}
