using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Splines;

namespace PlankFit.Geometry.Surfaces;

/// <summary>
/// A C2 surface lofted through a table of points, from its lower edge (v = 0) to its upper one (v = <see cref="UpperV"/>), u in mm along both.
/// Without an apex S = sum over k of v^k A_k(u), every A_k a cubic spline. With an apex, where both edges meet in a point at the first station,
/// s = u − UFrom and S = L(u) + v E(u) + sum over m of s² f_m(v/s) Γ_m(u), E = (H − L)/s, L and H the two edges, Γ_m = G_m/s², f_m(t) = t^(m+1) − t^(m+2):
/// the zero is divided out, so tangents, normal and curvature have their limits at the point.
/// Past the edges the same polynomials go on.
/// </summary>
public sealed class LoftedSurface : ISurface
{
    private readonly double[] knots;
    private readonly Vector256<double>[] rows; // [span][row][power], lanes x y z 0
    private readonly int rowCount;

    internal LoftedSurface(
        double[] knots,
        Vector256<double>[] rows,
        int rowCount,
        bool hasApex,
        bool flipped
    )
    {
        this.knots = knots;
        this.rows = rows;
        this.rowCount = rowCount;
        HasApex = hasApex;
        NormalSign = flipped ? -1 : 1;
    }

    /// <summary>u of the first and last station, mm.</summary>
    public double UFrom => knots[0];
    public double UTo => knots[^1];

    /// <summary>u of each station.</summary>
    public IReadOnlyList<double> StationU => knots;

    /// <summary>Both edges meet in a point at the first station.</summary>
    public bool HasApex { get; }

    private double NormalSign { get; }

    /// <summary>The v of the upper edge at u: 1, or the distance from the apex.</summary>
    public double UpperV(double u) => HasApex ? u - knots[0] : 1;

    public SurfacePoint At(double u, double v)
    {
        int span = Knots.Span(knots, u);
        double t = u - knots[span];
        return HasApex ? AtApexChart(span, t, u - knots[0], v) : AtPlainChart(span, t, v);
    }

    // What has Vector256 in its signatures is not compiled ahead of time; both are called far too often for code that was only made quickly.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private SurfacePoint AtPlainChart(int span, double t, double v)
    {
        int at = span * rowCount * 4;
        var tt = Vector256.Create(t);
        Vector256<double> p = default,
            du = default,
            dv = default,
            duu = default,
            duv = default,
            dvv = default;
        var vv = Vector256.Create(v);

        // Horner in v from the highest row; the derivatives in v ride along.
        for (int k = rowCount - 1; k >= 0; k--)
        {
            (Vector256<double> a, Vector256<double> a1, Vector256<double> a2) = Row(
                at + (k * 4),
                tt
            );
            dvv = Vector256.FusedMultiplyAdd(dvv, vv, dv + dv);
            dv = Vector256.FusedMultiplyAdd(dv, vv, p);
            duv = Vector256.FusedMultiplyAdd(duv, vv, du);
            p = Vector256.FusedMultiplyAdd(p, vv, a);
            du = Vector256.FusedMultiplyAdd(du, vv, a1);
            duu = Vector256.FusedMultiplyAdd(duu, vv, a2);
        }

        return Point(p, du, dv, duu, duv, dvv);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private SurfacePoint AtApexChart(int span, double t, double s, double v)
    {
        int at = span * rowCount * 4;
        var tt = Vector256.Create(t);
        (Vector256<double> p, Vector256<double> du, Vector256<double> duu) = Row(at, tt);
        (Vector256<double> e, Vector256<double> e1, Vector256<double> e2) = Divided(
            at + 4,
            span,
            tt,
            s,
            1
        );
        p += v * e;
        du += v * e1;
        duu += v * e2;
        Vector256<double> dv = e,
            duv = e1,
            dvv = default;
        for (int m = 0; m + 2 < rowCount; m++)
        {
            (Vector256<double> c, Vector256<double> c1, Vector256<double> c2) = Divided(
                at + ((m + 2) * 4),
                span,
                tt,
                s,
                2
            );
            var h = Homogeneous.At(m, s, v);
            p += h.Value * c;
            du += (h.S * c) + (h.Value * c1);
            dv += h.V * c;
            duu += (h.Ss * c) + (2 * h.S * c1) + (h.Value * c2);
            duv += (h.Sv * c) + (h.V * c1);
            dvv += h.Vv * c;
        }

        return Point(p, du, dv, duu, duv, dvv);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private (Vector256<double> Value, Vector256<double> First, Vector256<double> Second) Row(
        int at,
        Vector256<double> t
    )
    {
        Vector256<double> c0 = rows[at],
            c1 = rows[at + 1],
            c2 = rows[at + 2],
            c3 = rows[at + 3];
        Vector256<double> c3t = c3 * t,
            c2x2 = c2 + c2;
        return (
            Vector256.FusedMultiplyAdd(Vector256.FusedMultiplyAdd(c3t + c2, t, c1), t, c0),
            Vector256.FusedMultiplyAdd(
                Vector256.FusedMultiplyAdd(Vector256.Create(3.0), c3t, c2x2),
                t,
                c1
            ),
            Vector256.FusedMultiplyAdd(Vector256.Create(6.0), c3t, c2x2)
        );
    }

    /// <summary>
    /// A row that vanishes like s (or s²) at the apex, divided by s (or s²), with two derivatives. On the first span the division is exact
    /// in the coefficients; on the others s is at least a span away from zero.
    /// </summary>
    private (Vector256<double> Value, Vector256<double> First, Vector256<double> Second) Divided(
        int at,
        int span,
        Vector256<double> t,
        double s,
        int power
    )
    {
        if (span == 0)
        {
            Vector256<double> c2 = rows[at + 2],
                c3 = rows[at + 3];
            if (power == 2)
            {
                return (c2 + (s * c3), c3, Vector256<double>.Zero);
            }

            return (rows[at + 1] + (s * (c2 + (s * c3))), c2 + (2 * s * c3), 2 * c3);
        }

        (Vector256<double> a, Vector256<double> a1, Vector256<double> a2) = Row(at, t);
        for (int i = 0; i < power; i++)
        {
            a /= s;
            a1 = (a1 - a) / s;
            a2 = (a2 - (2 * a1)) / s;
        }

        return (a, a1, a2);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private SurfacePoint Point(
        Vector256<double> p,
        Vector256<double> du,
        Vector256<double> dv,
        Vector256<double> duu,
        Vector256<double> duv,
        Vector256<double> dvv
    )
    {
        Vec3 a = V(du),
            b = V(dv);
        Vec3 c = b.Cross(a);
        Vec3 n = (NormalSign / c.Norm) * c;
        return new(V(p), a, b, n, n.Dot(V(duu)), n.Dot(V(duv)), n.Dot(V(dvv)));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vec3 V(Vector256<double> a) =>
        new(a.GetElement(0), a.GetElement(1), a.GetElement(2));
}
