using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Seams;

/// <summary>The seam through two places, by shooting.</summary>
internal static class SeamThrough
{
    private const double WithinMm = 1e-7;
    private const int MostAims = 40;

    /// <summary>
    /// The geodesic through the feet of two points near the surface, and its stretch inside the region; null where it passes the region by or the aim does not
    /// settle. The miss square across over the Jacobi field gives the next aim.
    /// </summary>
    /// <param name="nearA">A place near the first point's foot; <paramref name="nearB"/> likewise.</param>
    public static Seam? Of(LayerRegion region, Vec3 a, Vec3 b, Uv nearA, Uv nearB, Tracing tracing)
    {
        if (
            !ClosestPoint.TryFind(region.Surface, a, nearA, WithinMm, out ClosestPoint.Result from)
            || !ClosestPoint.TryFind(region.Surface, b, nearB, WithinMm, out ClosestPoint.Result to)
        )
        {
            return null;
        }

        Vec3 aim = to.Foot.P - from.Foot.P;
        double length = aim.Norm;
        for (int i = 0; i < MostAims && length > 0; i++)
        {
            Geodesic line = GeodesicTracing.Trace(
                region.Surface,
                from.Uv,
                aim,
                0,
                length,
                tracing.ToleranceMm
            );
            GeodesicPoint end = line.At(length);
            SurfacePoint under = line.Under(length);
            Vec3 miss = to.Foot.P - under.P;
            double ahead = miss.Dot(end.Tangent),
                across = miss.Dot(under.Left(end.Tangent));
            if (Math.Abs(across) < WithinMm && Math.Abs(ahead) < WithinMm)
            {
                // Started anew from its middle, like every other seam.
                GeodesicPoint middle = line.At(length / 2);
                return Crossings.Find(region, tracing.Line(region, middle.Uv, middle.Tangent));
            }

            double turn = across / end.B;
            Vec3 now = from.Foot.UnitTangent(aim);
            aim = (Math.Cos(turn) * now) + (Math.Sin(turn) * from.Foot.Left(now));
            length += ahead;
        }

        return null;
    }
}
