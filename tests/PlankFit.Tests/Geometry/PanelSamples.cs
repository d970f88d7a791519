using PlankFit.Geometry.Development;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>Panels with a flat that is known, and the helpers to compare with it.</summary>
internal static class PanelSamples
{
    public static readonly double Deg = Math.PI / 180;

    /// <summary>Two curves on a circular cone of half angle 25 degrees.</summary>
    public static SurfacePatch Cone(int side = 1) =>
        new(
            new ConeSurface(25 * Deg, side),
            0.1,
            1.2,
            phi => 1500 + (200 * Math.Sin(phi)),
            phi => 3000 - (300 * phi * phi)
        );

    public static SurfacePatch Warped(int side = -1) =>
        new(new HyparSurface(1e-4, 0.2, side), 0, 6000, _ => 0, _ => 1000);

    /// <summary>Constant deadrise of 20 degrees on a rockered keel, in mm.</summary>
    public static SurfacePatch Rockered() =>
        new(new RockeredBottom(), 0, 6000, _ => 0, _ => 1000 / Math.Cos(20 * Deg));

    /// <summary>A strip of a sphere about a great circle, 3 m by 250 mm.</summary>
    public static SurfacePatch SphereStrip() =>
        new(new SphereSurface(3000), -0.5, 0.5, _ => -125.0 / 3000, _ => 125.0 / 3000);

    /// <summary>A twisted, cambered bottom, 8 m by about 1.1 m, as a launch might have: only a size and a shape to time.</summary>
    public static SurfacePatch Launch() =>
        new(new LaunchBottom(), 0, 8000, _ => 0, u => 1 + (0.1 * Math.Sin(u / 3000)));

    /// <summary>Panel flat carried, without mirroring, onto the exact flat by the two ends of the lower edge.</summary>
    public static Func<Vec2, Vec2> Onto(Vec2 from, Vec2 to, Vec2 exactFrom, Vec2 exactTo)
    {
        Vec2 a = (to - from).Unit(),
            b = (exactTo - exactFrom).Unit();
        double c = a.Dot(b),
            s = a.Cross(b);
        return p =>
        {
            Vec2 d = p - from;
            return exactFrom + new Vec2((c * d.X) - (s * d.Y), (s * d.X) + (c * d.Y));
        };
    }

    /// <summary>The greatest distance of the flat from the exact one over a grid of interior and edge points.</summary>
    public static double WorstMiss(
        SurfacePatch patch,
        IFlatMap map,
        Func<double, double, Vec2> exact
    )
    {
        Vec2 Flat(double u, double t) => map.At(u, patch.V(u, t));
        Vec2 Exact(double u, double t) => exact(u, patch.V(u, t));
        Func<Vec2, Vec2> onto = Onto(
            Flat(patch.UFrom, 0),
            Flat(patch.UTo, 0),
            Exact(patch.UFrom, 0),
            Exact(patch.UTo, 0)
        );
        double worst = 0;
        for (int i = 0; i <= 29; i++)
        {
            double u = patch.UFrom + (patch.URange * i / 29);
            for (int j = 0; j <= 7; j++)
            {
                worst = Math.Max(worst, onto(Flat(u, j / 7.0)).ChordTo(Exact(u, j / 7.0)));
            }
        }

        return worst;
    }
}

/// <summary>Another surface with u and v exchanged; the outer side is kept.</summary>
internal sealed record SwappedSurface(ISurface Surface) : ISurface
{
    public SurfacePoint At(double u, double v)
    {
        SurfacePoint s = Surface.At(v, u);
        return new(s.P, s.Dv, s.Du, s.Normal, s.N, s.M, s.L);
    }
}

/// <summary>P = (u, v cos b, 300 (u/6000)² + v sin b), b = 20 degrees; outer side below.</summary>
internal sealed record RockeredBottom : ISurface
{
    public SurfacePoint At(double u, double v)
    {
        double b = 20 * PanelSamples.Deg,
            z = 300 * u * u / 36e6;
        return AnalyticSurfaces.Point(
            new(u, v * Math.Cos(b), z + (v * Math.Sin(b))),
            new(1, 0, 600 * u / 36e6),
            new(0, Math.Cos(b), Math.Sin(b)),
            new(0, 0, 600 / 36e6),
            Vec3.Zero,
            Vec3.Zero,
            -1
        );
    }
}

/// <summary>Deadrise from 45 degrees forward to 14 aft, 20 mm of camber, a keel that rises forward; v from 0 to about 1; outer side below.</summary>
internal sealed record LaunchBottom : ISurface
{
    public SurfacePoint At(double u, double v)
    {
        double q = u / 8000,
            f = 1 - q,
            rise = 500 * f * f * f,
            riseU = -1500 * f * f / 8000,
            riseUu = 3000 * f / 64e6;
        double angle = (14 + (31 * f * f)) * PanelSamples.Deg,
            angleU = -62 * f / 8000 * PanelSamples.Deg,
            angleUu = 62 / 64e6 * PanelSamples.Deg;
        double w = 1050 * v,
            c = Math.Cos(angle),
            s = Math.Sin(angle),
            camber = -80 * v * (1 - v);
        return AnalyticSurfaces.Point(
            new(u, w * c, rise + (w * s) + camber),
            new(1, -w * s * angleU, riseU + (w * c * angleU)),
            new(0, 1050 * c, (1050 * s) - (80 * (1 - (2 * v)))),
            new(
                0,
                -w * ((c * angleU * angleU) + (s * angleUu)),
                riseUu + (w * ((-s * angleU * angleU) + (c * angleUu)))
            ),
            new(0, -1050 * s * angleU, 1050 * c * angleU),
            new(0, 0, 160),
            -1
        );
    }
}
