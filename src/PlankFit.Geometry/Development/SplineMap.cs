using System.Runtime.CompilerServices;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Geometry.Development;

/// <summary>
/// A flat given by a bicubic spline over the panel: along it 0 to 1 from UFrom to UTo, across it 0 to 1 from the lower
/// edge to the upper. Smooth to the second derivative; past the edges the end spans are carried on.
/// </summary>
internal sealed class SplineMap(
    SurfacePatch patch,
    CubicBasis along,
    CubicBasis across,
    Vec2[] control
) : IFlatMap
{
    public Vec2 At(double u, double v)
    {
        (double low, double width) = Section(u);
        return Evaluate((u - patch.UFrom) / patch.URange, Across(v, low, width)).P;
    }

    public (Vec2 Du, Vec2 Dv) RatesAt(double u, double v)
    {
        (double low, double width) = Section(u);
        double t = Across(v, low, width);
        (_, Vec2 dAlong, Vec2 dAcross) = Evaluate((u - patch.UFrom) / patch.URange, t);
        double lowRate = patch.Slope(patch.Lower, u),
            widthRate = patch.Slope(patch.Upper, u) - lowRate;
        Vec2 dv = dAcross / width;
        return ((dAlong / patch.URange) - ((lowRate + (t * widthRate)) * dv), dv);
    }

    private (double Low, double Width) Section(double u)
    {
        double low = patch.Lower(u);
        return (low, patch.Upper(u) - low);
    }

    private static double Across(double v, double low, double width) =>
        width != 0 ? (v - low) / width : 0.5;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public (Vec2 P, Vec2 DAlong, Vec2 DAcross) Evaluate(double s, double t)
    {
        Span<double> a = stackalloc double[4],
            da = stackalloc double[4],
            c = stackalloc double[4],
            dc = stackalloc double[4];
        int i0 = along.SpanOf(s),
            j0 = across.SpanOf(t);
        along.At(i0, s, a, da);
        across.At(j0, t, c, dc);
        Vec2 p = default,
            ps = default,
            pt = default;
        for (int i = 0; i < 4; i++)
        {
            for (int j = 0; j < 4; j++)
            {
                Vec2 x = control[((i0 + i) * across.Count) + j0 + j];
                p += a[i] * c[j] * x;
                ps += da[i] * c[j] * x;
                pt += a[i] * dc[j] * x;
            }
        }

        return (p, ps, pt);
    }
}
