using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Strips;

/// <summary>A place on a strip: s along its centre geodesic, t square to it (to the left, seen from outside), both mm on the surface.</summary>
public readonly record struct Fermi(double S, double T);

/// <summary>
/// Coordinates about a geodesic: the point (s, t) is reached by going s along the centre line and t along the geodesic square to it.
/// In them the metric is g² ds² + dt², g = 1 − K t²/2 + ..., so that laying the strip flat with x = s, y = t costs only that strain.
/// </summary>
public sealed class FermiStrip(Geodesic centre, double stepMm = 40)
{
    /// <summary>A foot further off than this, mm, is none: the search has run away.</summary>
    private const double FurthestMm = 10000;

    /// <summary>What a mm along a traced line is out by: 4e-6 were met.</summary>
    private const double Unsure = 2e-5;

    public Geodesic Centre => centre;

    /// <summary>The surface parameters of (s, t), and the unit tangent of the perpendicular there.</summary>
    public (Uv Uv, Vec3 Tangent) At(Fermi f)
    {
        GeodesicPoint c = centre.At(f.S);
        SurfacePoint p = centre.Surface.At(c.Uv.U, c.Uv.V);
        return GeodesicTracing.Shoot(centre.Surface, c.Uv, p.Left(c.Tangent), f.T, stepMm);
    }

    /// <summary>
    /// The strip coordinates of a point given by its parameters, by Newton from a guess.
    /// </summary>
    /// <param name="toleranceMm">How near the point must be met, mm.</param>
    /// <exception cref="GeodesicException">Where it does not settle: the point is too far from the strip.</exception>
    public Fermi Find(Uv uv, Vec3 point, Fermi guess, double toleranceMm)
    {
        Fermi f = guess;
        int steps = 1;
        for (int i = 0; i < 25; i++)
        {
            double s = Math.Clamp(f.S, centre.From, centre.To);
            GeodesicPoint c = centre.At(s);
            SurfacePoint under = centre.Surface.At(c.Uv.U, c.Uv.V);

            // Never fewer steps than before: a foot just where one step more begins would be missed from either side for ever.
            steps = Math.Max(steps, GeodesicTracing.StepsOf(f.T, stepMm));
            (Uv end, Vec3 tangent) = GeodesicTracing.Shoot(
                centre.Surface,
                c.Uv,
                under,
                under.Left(c.Tangent),
                f.T,
                steps
            );
            SurfacePoint p = centre.Surface.At(end.U, end.V);

            // The miss, taken along the surface: parameter difference through the tangents is exact to second order, as the chord is.
            Vec3 miss = point - p.P;
            Vec3 across = p.UnitTangent(tangent);
            double dt = miss.Dot(across),
                ds = miss.Dot(across.Cross(p.Normal));
            double stretch = 1 - (under.GaussCurvature * f.T * f.T / 2);
            double still = StillMissed(under, f.T, Math.Abs(dt) + Math.Abs(ds));
            f = new(s + (ds / stretch), f.T + dt);
            if (still < toleranceMm)
            {
                return f;
            }

            if (!(Math.Abs(f.T) < FurthestMm))
            {
                break;
            }
        }

        throw new GeodesicException(
            "no place of the plank's own line lies square abreast of it",
            uv
        );
    }

    /// <summary>
    /// What a step leaves to be made, mm, with a good deal to spare: of the second order by the strip's own metric, K t; of the third by its chord, the square of the
    /// curvatures; and of the first what the curvature, taken at the foot, changes across, a tenth of K t², and what the line's and the perpendicular's own lengths are
    /// out by.
    /// </summary>
    private static double StillMissed(in SurfacePoint under, double t, double moved)
    {
        double gauss = under.GaussCurvature,
            mean = under.MeanCurvature,
            squares = (4 * mean * mean) - (2 * gauss);
        return moved
            * (
                (moved * 2 * Math.Abs(gauss * t))
                + (moved * moved * squares)
                + (Math.Abs(gauss) * t * t / 10)
                + Unsure
            );
    }
}
