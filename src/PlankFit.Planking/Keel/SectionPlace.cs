using PlankFit.Geometry.Surfaces;

namespace PlankFit.Planking.Keel;

/// <summary>A place of a surface found by its section and half-breadth.</summary>
/// <param name="SlopeAcross">dz/dy in the section through it: the tangent of the deadrise.</param>
internal readonly record struct SectionPlace(Uv Uv, SurfacePoint Surface, double SlopeAcross)
{
    /// <summary>The place at x and half-breadth y, by Newton from the keel; null where there is none.</summary>
    public static SectionPlace? Find(ISurface surface, LoftedSurface hull, double x, double y)
    {
        double part =
            (x - hull.At(hull.UFrom, 0).P.X)
            / (hull.At(hull.UTo, 0).P.X - hull.At(hull.UFrom, 0).P.X);
        double u = hull.UFrom + (part * (hull.UTo - hull.UFrom)),
            v = 0;
        for (int i = 0; i < 40; i++)
        {
            SurfacePoint p = surface.At(u, v);
            double dx = x - p.P.X,
                dy = y - p.P.Y,
                det = (p.Du.X * p.Dv.Y) - (p.Dv.X * p.Du.Y);
            u += ((dx * p.Dv.Y) - (dy * p.Dv.X)) / det;
            v += ((dy * p.Du.X) - (dx * p.Du.Y)) / det;
            if (Math.Abs(dx) + Math.Abs(dy) < 1e-10)
            {
                return new(new(u, v), p, -p.Normal.Y / p.Normal.Z);
            }
        }

        return null;
    }
}
