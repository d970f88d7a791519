using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>
/// A geodesic by another road: straight steps in space, each pulled back to the surface along the normal of the current point (SHAKE; second order in the
/// step). It uses positions and normals alone, no second form, so that it shares nothing with the kernel's equations.
/// </summary>
internal static class SpaceStepper
{
    /// <summary>The point after so many mm, by steps of h, with the parameters there.</summary>
    public static (Vec3 P, Uv Uv) Walk(
        ISurface surface,
        Uv start,
        Vec3 direction,
        double length,
        double stepMm
    )
    {
        int n = (int)Math.Ceiling(length / stepMm);
        double h = length / n;
        SurfacePoint s = surface.At(start.U, start.V);
        Vec3 before = s.P,
            t = s.UnitTangent(direction);

        // A half-step symmetric start: the first step is straight ahead, pulled along the normal, and lengthened to h on the surface's curve.
        Uv uv = start + (h * s.Rates(t));
        (Vec3 here, uv) = Pull(surface, before + (h * t), s.Normal, uv);
        Vec3 normal = surface.At(uv.U, uv.V).Normal;
        for (int i = 1; i < n; i++)
        {
            (Vec3 next, Uv at) = Pull(surface, (2 * here) - before, normal, uv + (uv - start));
            (before, here, start, uv) = (here, next, uv, at);
            normal = surface.At(uv.U, uv.V).Normal;
        }

        return (here, uv);
    }

    /// <summary>Where the line from a point along a direction meets the surface.</summary>
    private static (Vec3 P, Uv Uv) Pull(ISurface surface, Vec3 point, Vec3 along, Uv guess)
    {
        Uv uv = guess;
        double lambda = 0;
        for (int i = 0; i < 20; i++)
        {
            SurfacePoint s = surface.At(uv.U, uv.V);
            Vec3 miss = point + (lambda * along) - s.P;
            if (miss.Norm < 1e-11)
            {
                break;
            }

            // Solve Du a + Dv b - along c = miss.
            Vec3 c = -along;
            double det = s.Du.Dot(s.Dv.Cross(c));
            uv += new Uv(miss.Dot(s.Dv.Cross(c)) / det, s.Du.Dot(miss.Cross(c)) / det);
            lambda += s.Du.Dot(s.Dv.Cross(miss)) / det;
        }

        return (surface.At(uv.U, uv.V).P, uv);
    }
}
