using MathNet.Numerics.RootFinding;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Splines;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Regions;

/// <summary>
/// The part of a parallel surface that a layer covers, starboard: between its lower edge (v = LowerV(u); of a bottom the keel's side) and its upper one, from stem to
/// transom. Its boundary is walked along the lower edge aft, transom outboard, upper edge forward, stem inboard: a lap number 0 to 4.
/// </summary>
internal sealed class LayerRegion
{
    private readonly LoftedSurface hull;
    private readonly KeelTrace keelV;
    private readonly CubicSpline scale;

    private LayerRegion(
        LoftedSurface hull,
        ISurface surface,
        KeelTrace keelV,
        CubicSpline scale,
        double uFrom,
        bool hasStem,
        Panel panel
    )
    {
        this.hull = hull;
        this.keelV = keelV;
        this.scale = scale;
        Surface = surface;
        UFrom = uFrom;
        UTo = hull.UTo;
        HasStem = hasStem;
        Panel = panel;
    }

    public ISurface Surface { get; }
    public double UFrom { get; }
    public double UTo { get; }

    /// <summary>The panel that the layer covers.</summary>
    public Panel Panel { get; }

    /// <summary>False where keel's side and chine meet in a point forward.</summary>
    public bool HasStem { get; }

    public LoftedSurface Hull => hull;

    public static LayerRegion On(
        LoftedSurface hull,
        double offsetMm,
        KeelSideFace keelSide,
        double pastMm,
        Panel panel
    )
    {
        ISurface surface = new ParallelSurface(hull, offsetMm);
        KeelTrace keelV = KeelFace.Trace(hull, surface, keelSide, pastMm);
        CubicSpline scale = Scale(hull, surface, pastMm);
        double from = hull.UFrom;
        bool stem = true;
        if (hull.HasApex)
        {
            double Room(double u) => hull.UpperV(u) - keelV.At(u);
            if (Room(from) <= 1e-9)
            {
                double beyond = from;
                while (Room(beyond) <= 0 && beyond < hull.UTo)
                {
                    beyond += (hull.UTo - hull.UFrom) / 500;
                }

                from = beyond > from ? Brent.FindRoot(Room, from, beyond, 1e-9, 100) : from;
                stem = false;
            }
        }

        return new(hull, surface, keelV, scale, from, stem, panel);
    }

    public double LowerV(double u) => keelV.At(u);

    public double LowerVRate(double u) => keelV.Slope(u);

    public double UpperV(double u) => hull.UpperV(u);

    /// <summary>Signed distance inside the nearest edge, mm, right to first order near the edge; negative outside.</summary>
    public double Room(Uv p)
    {
        double size = scale.At(p.U);
        double keel = (p.V - LowerV(p.U)) * size,
            chine = (UpperV(p.U) - p.V) * size;
        return Math.Min(Math.Min(keel, chine), Math.Min(p.U - UFrom, UTo - p.U));
    }

    /// <summary>The edge that a point is nearest to, or furthest beyond.</summary>
    public PanelEdge NearestEdge(Uv p)
    {
        double size = scale.At(p.U);
        double keel = (p.V - LowerV(p.U)) * size,
            chine = (UpperV(p.U) - p.V) * size,
            stem = p.U - UFrom,
            transom = UTo - p.U;
        double least = Math.Min(Math.Min(keel, chine), Math.Min(stem, transom));
        return least == keel ? PanelEdge.Lower
            : least == chine ? PanelEdge.Upper
            : least == transom ? PanelEdge.Transom
            : PanelEdge.Stem;
    }

    /// <summary>A point of an edge by its lap number, which may be given a whole lap early or late.</summary>
    public Uv OnLap(double lap, PanelEdge edge)
    {
        double along = lap - First(edge);
        double x = along - (4 * Math.Round(along / 4));
        switch (edge)
        {
            case PanelEdge.Lower:
                double u = UFrom + (x * (UTo - UFrom));
                return new(u, LowerV(u));
            case PanelEdge.Transom:
                return new(UTo, LowerV(UTo) + (x * (UpperV(UTo) - LowerV(UTo))));
            case PanelEdge.Upper:
                double w = UTo - (x * (UTo - UFrom));
                return new(w, UpperV(w));
            default:
                return new(UFrom, UpperV(UFrom) - (x * (UpperV(UFrom) - LowerV(UFrom))));
        }
    }

    /// <summary>The lap number at which an edge begins.</summary>
    private static int First(PanelEdge edge) =>
        edge switch
        {
            PanelEdge.Lower => 0,
            PanelEdge.Transom => 1,
            PanelEdge.Upper => 2,
            _ => 3,
        };

    /// <summary>The lap number of a point on the boundary.</summary>
    public double LapOf(PanelEdge edge, Uv p)
    {
        double along = (p.U - UFrom) / (UTo - UFrom);
        double across = (p.V - LowerV(p.U)) / (UpperV(p.U) - LowerV(p.U));
        return edge switch
        {
            PanelEdge.Lower => Math.Clamp(along, 0, 1),
            PanelEdge.Transom => 1 + Math.Clamp(across, 0, 1),
            PanelEdge.Upper => 3 - Math.Clamp(along, 0, 1),
            _ => 4 - Math.Clamp(across, 0, 1),
        };
    }

    public static PanelEdge EdgeOfLap(double lap) =>
        ((int)Math.Floor(lap) & 3) switch
        {
            0 => PanelEdge.Lower,
            1 => PanelEdge.Transom,
            2 => PanelEdge.Upper,
            _ => PanelEdge.Stem,
        };

    public Vec3 PointAt(Uv p) => Surface.At(p.U, p.V).P;

    /// <summary>The u at mid-bottom (half of v on the table's surface) where the layer's x is as given; null where it is off the bottom.</summary>
    public Uv? MiddleAt(double x)
    {
        double X(double u) => Surface.At(u, hull.UpperV(u) / 2).P.X - x;
        if (X(UFrom) * X(UTo) > 0)
        {
            return null;
        }

        double u = Brent.FindRoot(X, UFrom, UTo, 1e-9, 200);
        return new(u, hull.UpperV(u) / 2);
    }

    /// <summary>mm of surface a unit of v, mid-bottom.</summary>
    private static CubicSpline Scale(LoftedSurface hull, ISurface surface, double pastMm)
    {
        const int n = 40;
        double[] u = new double[n + 1],
            mm = new double[n + 1];
        for (int i = 0; i <= n; i++)
        {
            u[i] = hull.UFrom - pastMm + ((hull.UTo - hull.UFrom + (2 * pastMm)) * i / n);
            double inside = Math.Clamp(u[i], hull.UFrom, hull.UTo);
            mm[i] = surface.At(inside, hull.UpperV(inside) / 2).Dv.Norm;
        }

        return CubicSpline.Through(u, mm);
    }
}
