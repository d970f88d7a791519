using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Splines;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Planking.Framing;

/// <summary>
/// One unbroken run of a thing behind, in the starboard frame: its centre and its two edges as curves in the surface's parameters, which are the same on every
/// face of the stack. The parameter t is about the distance along the centre, mm.
/// </summary>
/// <param name="EndsFirst">It truly ends at its first node, and does not only run off the bottom there. <paramref name="EndsLast"/> likewise.</param>
internal sealed record FramingStrip(
    FramingSpec Of,
    double[] Nodes,
    Vec3[] Points,
    UvSpline Centre,
    UvSpline Left,
    UvSpline Right,
    bool EndsFirst,
    bool EndsLast
)
{
    /// <summary>Steps of the edges' perpendiculars, mm.</summary>
    private const double StepMm = 40;

    public double From => Nodes[0];
    public double To => Nodes[^1];

    /// <summary>A strip about a line of places on a face, at least four of them; its edges are square to it at every one, along geodesics of the face.</summary>
    public static FramingStrip About(
        FramingSpec of,
        ISurface face,
        IReadOnlyList<Uv> line,
        bool endsFirst,
        bool endsLast
    )
    {
        int n = line.Count;
        double[] t = new double[n];
        var points = new Vec3[n];
        for (int i = 0; i < n; i++)
        {
            points[i] = face.At(line[i].U, line[i].V).P;
            t[i] = i == 0 ? 0 : t[i - 1] + points[i].ChordTo(points[i - 1]);
        }

        var centre = UvSpline.Through(t, line);
        var left = new Uv[n];
        var right = new Uv[n];
        for (int i = 0; i < n; i++)
        {
            SurfacePoint p = face.At(line[i].U, line[i].V);
            Uv rate = centre.Slope(t[i]);
            Vec3 across = p.Left(p.UnitTangent((rate.U * p.Du) + (rate.V * p.Dv)));
            left[i] = GeodesicTracing.Shoot(face, line[i], across, of.WidthMm / 2, StepMm).Uv;
            right[i] = GeodesicTracing.Shoot(face, line[i], -across, of.WidthMm / 2, StepMm).Uv;
        }

        return new(
            of,
            t,
            points,
            centre,
            UvSpline.Through(t, left),
            UvSpline.Through(t, right),
            endsFirst,
            endsLast
        );
    }
}

/// <summary>A curve in a surface's parameters.</summary>
internal sealed class UvSpline
{
    private readonly CubicSpline u,
        v;

    private UvSpline(CubicSpline u, CubicSpline v)
    {
        (this.u, this.v) = (u, v);
    }

    public static UvSpline Through(double[] t, IReadOnlyList<Uv> places) =>
        new(
            CubicSpline.Through(t, [.. places.Select(p => p.U)]),
            CubicSpline.Through(t, [.. places.Select(p => p.V)])
        );

    public Uv At(double t) => new(u.At(t), v.At(t));

    public Uv Slope(double t) => new(u.Slope(t), v.Slope(t));
}
