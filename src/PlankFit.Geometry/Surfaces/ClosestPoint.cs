using PlankFit.Geometry.Primitives;

namespace PlankFit.Geometry.Surfaces;

/// <summary>The point of a surface closest to a point in space, by Newton's method on the two tangent conditions.</summary>
public static class ClosestPoint
{
    /// <param name="Uv">Parameters of the foot.</param>
    /// <param name="Foot">The surface there.</param>
    /// <param name="HeightMm">Signed distance along the normal.</param>
    /// <param name="LeftoverMm">How far from square the foot still is, mm: the answer's own error.</param>
    public readonly record struct Result(
        Uv Uv,
        SurfacePoint Foot,
        double HeightMm,
        double LeftoverMm
    );

    /// <summary>Starts from a guess near the foot; false where it does not settle below the tolerance within thirty steps.</summary>
    public static bool TryFind(
        ISurface surface,
        Vec3 point,
        Uv guess,
        double toleranceMm,
        out Result result
    )
    {
        Uv uv = guess;
        for (int i = 0; i < 30; i++)
        {
            SurfacePoint s = surface.At(uv.U, uv.V);
            Vec3 r = point - s.P;
            double height = r.Dot(s.Normal);

            // The Hessian of half the squared distance: first form less height times second form.
            double a = s.E - (height * s.L),
                b = s.F - (height * s.M),
                c = s.G - (height * s.N);
            double det = (a * c) - (b * b),
                ru = r.Dot(s.Du),
                rv = r.Dot(s.Dv);
            double leftover = (r - (height * s.Normal)).Norm;
            if (leftover < toleranceMm)
            {
                result = new(uv, s, height, leftover);
                return true;
            }

            uv += new Uv(((c * ru) - (b * rv)) / det, ((a * rv) - (b * ru)) / det);
            if (!double.IsFinite(uv.U) || !double.IsFinite(uv.V))
            {
                break;
            }
        }

        result = default;
        return false;
    }
}
