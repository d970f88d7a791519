using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Seams;

/// <summary>The angle in the surface between a line and the keel where they meet, degrees: from the keel's aft run where planks head aft, from its forward run where they head forward.</summary>
internal static class KeelAngle
{
    public static double Of(LayerRegion region, GeodesicPoint p, Heads heads)
    {
        Vec3 keel = KeelRun(region, p.Uv.U, heads);
        return Math.Acos(Math.Clamp(p.Tangent.Dot(keel), -1, 1)) * 180 / Math.PI;
    }

    /// <summary>Unit tangent of the keel's trace on the layer's surface, the way the planks head.</summary>
    public static Vec3 KeelRun(LayerRegion region, double u, Heads heads)
    {
        SurfacePoint s = region.Surface.At(u, region.LowerV(u));
        Vec3 run = (s.Du + (region.LowerVRate(u) * s.Dv)).Unit();
        return heads == Heads.Aft ? run : -run;
    }

    /// <summary>The direction, outboard, of a line that leaves the keel at u at an angle.</summary>
    public static Vec3 Direction(LayerRegion region, double u, Heads heads, double degrees)
    {
        SurfacePoint s = region.Surface.At(u, region.LowerV(u));
        Vec3 run = KeelRun(region, u, heads);
        Vec3 left = s.Left(run);
        Vec3 outboard = left.Dot(s.Dv) > 0 ? left : -left;
        double a = degrees * Math.PI / 180;
        return (Math.Cos(a) * run) + (Math.Sin(a) * outboard);
    }
}
