using MathNet.Numerics.Integration;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Framing;

/// <summary>
/// One face of the stack between the keel's side and the chine, in the starboard frame, and tapes laid on it in planes across the hull. Past its edges it
/// goes on by the surface's own polynomials.
/// </summary>
internal sealed class SectionFace
{
    /// <summary>How far the keel's side is traced past both ends, mm.</summary>
    private const double PastMm = 400;

    private readonly LoftedSurface hull;
    private readonly KeelTrace keelV;

    private SectionFace(LoftedSurface hull, ISurface surface, KeelTrace keelV)
    {
        (this.hull, this.keelV) = (hull, keelV);
        Surface = surface;
        double[] ends =
        [
            PointAt(Keel(hull.UFrom)).X,
            PointAt(Chine(hull.UFrom)).X,
            PointAt(Keel(hull.UTo)).X,
            PointAt(Chine(hull.UTo)).X,
        ];
        (FromX, ToX) = (ends.Min(), ends.Max());
    }

    public ISurface Surface { get; }

    /// <summary>The least and the greatest x of the corners, mm.</summary>
    public double FromX { get; }
    public double ToX { get; }

    public double FromU => hull.UFrom;
    public double ToU => hull.UTo;

    public static SectionFace At(HullSurface hull, double offsetMm, KeelSideFace keelSide)
    {
        var surface = new ParallelSurface(hull.Surface, offsetMm);
        return new(hull.Surface, surface, KeelFace.Trace(hull.Surface, surface, keelSide, PastMm));
    }

    public Uv Keel(double u) => new(u, keelV.At(u));

    public Uv Chine(double u) => new(u, hull.UpperV(u));

    /// <summary>Where the keel's side meets the plane at x.</summary>
    public Uv KeelAt(double x) => OnEdge(Keel, x);

    public Uv ChineAt(double x) => OnEdge(Chine, x);

    public Vec3 PointAt(Uv uv) => Surface.At(uv.U, uv.V).P;

    /// <summary>From keel to chine along the section at x, mm.</summary>
    public double GirthMm(double x) => AlongMm(x, KeelAt(x), ChineAt(x));

    /// <summary>Along the section at x from one place of it to another, mm; positive going outboard. Gauss-Legendre: better than 0.001 mm on sections of hulls.</summary>
    public double AlongMm(double x, Uv from, Uv to) =>
        GaussLegendreRule.Integrate(
            v => Run(x, new(from.U + ((to.U - from.U) * Part(from, to, v)), v)).Speed,
            from.V,
            to.V,
            8
        );

    /// <summary>The place so far outboard of another along the section at x.</summary>
    public Uv Out(double x, Uv from, double mm)
    {
        double v = from.V + (mm / Run(x, from).Speed);
        Uv at = from;
        for (int i = 0; i < 12; i++)
        {
            (at, double speed) = Run(x, new(at.U, v));
            double off = mm - AlongMm(x, from, at);
            if (Math.Abs(off) < 1e-8)
            {
                break;
            }

            v += off / speed;
        }

        return at;
    }

    /// <summary>The place of the section at x with this v, from a guess of its u, and the mm of section a unit of v.</summary>
    private (Uv Place, double Speed) Run(double x, Uv guess)
    {
        double u = guess.U;
        for (int i = 0; ; i++)
        {
            SurfacePoint p = Surface.At(u, guess.V);
            double off = x - p.P.X;
            if (Math.Abs(off) < 1e-9 || i == 20)
            {
                Vec3 run = p.Dv - (p.Dv.X / p.Du.X * p.Du);
                return (new(u, guess.V), run.Norm);
            }

            u += off / p.Du.X;
        }
    }

    private static double Part(Uv from, Uv to, double v) =>
        to.V == from.V ? 0 : (v - from.V) / (to.V - from.V);

    private Uv OnEdge(Func<double, Uv> edge, double x)
    {
        double span = hull.UTo - hull.UFrom,
            a = PointAt(edge(hull.UFrom)).X,
            b = PointAt(edge(hull.UTo)).X,
            u = hull.UFrom + (span * (x - a) / (b - a));
        for (int i = 0; i < 40; i++)
        {
            const double step = 1e-3;
            double off = x - PointAt(edge(u)).X,
                slope = (PointAt(edge(u + step)).X - PointAt(edge(u - step)).X) / (2 * step);
            u += off / slope;
            if (Math.Abs(off) < 1e-9)
            {
                break;
            }
        }

        return edge(u);
    }
}
