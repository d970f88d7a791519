using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>A surface of the bottom cut by a plane across the hull at x, keel's side to chine.</summary>
internal sealed class SectionCut
{
    private readonly ISurface surface;
    private readonly LoftedSurface hull;
    private readonly Func<double, double> planeX;
    private readonly double keelV;
    private readonly double startU;

    /// <param name="planeX">x of the cutting surface by the part from keel to chine: constant for a plane across, a line for a raked transom.</param>
    public SectionCut(
        ISurface surface,
        LoftedSurface hull,
        KeelSideFace keelSide,
        double startU,
        Func<double, double> planeX
    )
    {
        (this.surface, this.hull, this.planeX, this.startU) = (surface, hull, planeX, startU);
        keelV = keelSide.Meet(surface, startU, 0);
    }

    /// <summary>The surface at a part of the way from keel to chine, in the plane.</summary>
    public SurfacePoint At(double part)
    {
        double u = startU,
            x = planeX(part);
        SurfacePoint p = default;
        for (int i = 0; i < 30; i++)
        {
            p = surface.At(u, keelV + (part * (hull.ChineV(u) - keelV)));
            double miss = p.P.X - x;
            u -= miss / p.Du.X;
            if (Math.Abs(miss) < 1e-11)
            {
                break;
            }
        }

        return p;
    }

    public ImmutableArray<Vec2> Line(int steps) =>
        [
            .. Enumerable
                .Range(0, steps + 1)
                .Select(i => At((double)i / steps).P)
                .Select(p => new Vec2(p.Y, p.Z)),
        ];
}
