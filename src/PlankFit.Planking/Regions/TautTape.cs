using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Planking.Regions;

/// <summary>A tape held down on a face between two points: the geodesic, by aiming.</summary>
internal static class TautTape
{
    /// <summary>So near, mm, that what is missed ahead is length and what is missed across none: its square over twice the length, and that over a radius.</summary>
    private const double NearMm = 0.02;

    /// <summary>
    /// Its length, mm: the miss square across over the Jacobi field gives the next aim. Null where the aim does not settle: no number is better than a wrong one.
    /// </summary>
    public static double? Between(ISurface face, Uv start, Uv end)
    {
        Vec3 from = face.At(start.U, start.V).P,
            to = face.At(end.U, end.V).P;
        Vec3 aim = to - from;
        double length = aim.Norm;
        for (int i = 0; i < 12 && length > 0; i++)
        {
            Geodesic line = GeodesicTracing.Trace(face, start, aim, 0, length, 1e-5);
            GeodesicPoint p = line.At(length);
            SurfacePoint under = face.At(p.Uv.U, p.Uv.V);
            Vec3 miss = to - under.P;
            double ahead = miss.Dot(p.Tangent),
                across = miss.Dot(under.Left(p.Tangent));
            if (Math.Abs(across) < NearMm && Math.Abs(ahead) < NearMm)
            {
                return length + ahead;
            }

            SurfacePoint first = face.At(start.U, start.V);
            Vec3 t = first.UnitTangent(aim);
            double turn = across / p.B;
            aim = (Math.Cos(turn) * t) + (Math.Sin(turn) * first.Left(t));
            length += ahead;
        }

        return null;
    }
}
