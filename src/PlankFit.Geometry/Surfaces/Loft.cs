using System.Runtime.Intrinsics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Splines;

namespace PlankFit.Geometry.Surfaces;

/// <summary>
/// Lofting: one section a station, each the polynomial through its two to seven points (straight, or cambered), rows interpolated along u
/// by cubic splines on one common knot vector. The two edge lines and every given point are on the surface exactly.
/// Skinning with a common averaged parameter: Piegl and Tiller, The NURBS Book, ch. 10 (from memory).
/// </summary>
public static class Loft
{
    /// <summary>The most points that a section may have: beyond degree six a polynomial through points waves between them.</summary>
    public const int MostPoints = 7;

    /// <summary>Lofts sections of two to <see cref="MostPoints"/> points, lower edge to upper, from forward to aft; mm.</summary>
    /// <param name="sections">At least two. A first section whose points all coincide is an apex.</param>
    /// <param name="outer">The surface's normal is on the side of this direction, judged at its middle.</param>
    /// <param name="coincideMm">Points of the first section closer than this are one point, an apex.</param>
    /// <param name="parameter">u of each section, rising: lofts with one parameter have the very same curve where they share a line. Null for their own.</param>
    public static LoftedSurface Through(
        IReadOnlyList<IReadOnlyList<Vec3>> sections,
        Vec3 outer,
        double coincideMm,
        double[]? parameter = null
    )
    {
        int n = sections.Count;
        if (n < 2 || sections.Any(s => s.Count < 2 || s.Count > MostPoints))
        {
            throw new ArgumentException(
                $"a loft needs two sections or more, of 2 to {MostPoints} points each; given {n} sections"
            );
        }

        bool apex = sections[0].All(p => p.ChordTo(sections[0][0]) < coincideMm);
        int degree = sections.Max(s => s.Count) - 1;
        double[] u = parameter ?? CommonParameter(sections);
        var rows = new Vec3[degree + 1][];
        for (int k = 0; k <= degree; k++)
        {
            rows[k] = new Vec3[n];
        }

        for (int i = 0; i < n; i++)
        {
            Vec3[] section =
                apex && i == 0 ? [sections[0][0]] : SectionPolynomial.Through(sections[i]);
            for (int k = 0; k < section.Length; k++)
            {
                rows[k][i] = section[k];
            }
        }

        if (apex)
        {
            rows = ApexRows(rows);
        }

        SplineEnd end = SplineSpans.AdvisedEnd(n);
        Vector256<double>[] packed = Pack(u, rows, k => apex && k >= 2 ? SplineEnd.Flat : end, end);
        var upright = new LoftedSurface(u, packed, rows.Length, apex, flipped: false);
        double mid = (u[0] + u[^1]) / 2;
        bool flip = upright.At(mid, upright.UpperV(mid) / 2).Normal.Dot(outer) < 0;
        return flip ? new LoftedSurface(u, packed, rows.Length, apex, flipped: true) : upright;
    }

    /// <summary>Mean of both edges' cumulative chord lengths, mm: the u of each section where none is given.</summary>
    public static double[] CommonParameter(IReadOnlyList<IReadOnlyList<Vec3>> sections)
    {
        double[] u = new double[sections.Count];
        for (int i = 1; i < u.Length; i++)
        {
            double lower = sections[i - 1][0].ChordTo(sections[i][0]);
            double upper = sections[i - 1][^1].ChordTo(sections[i][^1]);
            u[i] = u[i - 1] + ((lower + upper) / 2);
        }

        return u;
    }

    /// <summary>From power rows A_k to the lower edge, the difference upper − lower, and the camber rows G_m of v(1 − v)(G_0 + G_1 v + ...).</summary>
    private static Vec3[][] ApexRows(Vec3[][] power)
    {
        int n = power[0].Length;
        var rows = new Vec3[power.Length][];
        for (int k = 0; k < rows.Length; k++)
        {
            rows[k] = new Vec3[n];
        }

        for (int i = 0; i < n; i++)
        {
            rows[0][i] = power[0][i];
            Vec3 difference = Vec3.Zero;
            for (int k = 1; k < power.Length; k++)
            {
                difference += power[k][i];
            }

            rows[1][i] = difference;
            Vec3 sum = power[1][i] - difference;
            for (int k = 2; k < rows.Length; k++)
            {
                rows[k][i] = sum;
                sum += power[k][i];
            }
        }

        return rows;
    }

    private static Vector256<double>[] Pack(
        double[] u,
        Vec3[][] rows,
        Func<int, SplineEnd> first,
        SplineEnd last
    )
    {
        int spans = u.Length - 1;
        var packed = new Vector256<double>[spans * rows.Length * 4];
        for (int k = 0; k < rows.Length; k++)
        {
            double[][] x = SplineSpans.Through(
                u,
                Array.ConvertAll(rows[k], p => p.X),
                first(k),
                last
            );
            double[][] y = SplineSpans.Through(
                u,
                Array.ConvertAll(rows[k], p => p.Y),
                first(k),
                last
            );
            double[][] z = SplineSpans.Through(
                u,
                Array.ConvertAll(rows[k], p => p.Z),
                first(k),
                last
            );
            for (int i = 0; i < spans; i++)
            {
                for (int power = 0; power < 4; power++)
                {
                    packed[(((i * rows.Length) + k) * 4) + power] = Vector256.Create(
                        x[i][power],
                        y[i][power],
                        z[i][power],
                        0
                    );
                }
            }
        }

        return packed;
    }
}
