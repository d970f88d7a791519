using System.Runtime.CompilerServices;

namespace PlankFit.Geometry.Development;

/// <summary>
/// Uniform cubic B-splines on [0, 1] with clamped ends: Spans + 3 functions, four of them alive on each span.
/// Piegl and Tiller, The NURBS Book, A2.2 and A2.3 (from memory).
/// </summary>
internal sealed class CubicBasis(int spans)
{
    public int Spans => spans;

    public int Count => spans + 3;

    /// <summary>Where the function of this index has its centre: the mean of its three inner knots.</summary>
    public double Greville(int index) => (Knot(index + 1) + Knot(index + 2) + Knot(index + 3)) / 3;

    /// <summary>The span that holds t; outside [0, 1] the end spans are carried on.</summary>
    public int SpanOf(double t) => Math.Clamp((int)Math.Floor(t * spans), 0, spans - 1);

    /// <summary>Values and first derivatives at t of the four functions alive on the span; the first has the span's own index.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void At(int span, double t, Span<double> value, Span<double> rate)
    {
        Span<double> left = stackalloc double[4],
            right = stackalloc double[4],
            lower = stackalloc double[4];
        value[0] = 1;
        for (int j = 1; j <= 3; j++)
        {
            left[j] = t - Knot(span + 4 - j);
            right[j] = Knot(span + 3 + j) - t;
            if (j == 3)
            {
                value[..3].CopyTo(lower);
            }

            double saved = 0;
            for (int r = 0; r < j; r++)
            {
                double part = value[r] / (right[r + 1] + left[j - r]);
                value[r] = saved + (right[r + 1] * part);
                saved = left[j - r] * part;
            }

            value[j] = saved;
        }

        // N'(i, 3) = 3 [ N(i, 2) / (t(i+3) - t(i)) - N(i+1, 2) / (t(i+4) - t(i+1)) ]
        for (int r = 0; r < 4; r++)
        {
            double down = r > 0 ? lower[r - 1] / (Knot(span + r + 3) - Knot(span + r)) : 0,
                up = r < 3 ? lower[r] / (Knot(span + r + 4) - Knot(span + r + 1)) : 0;
            rate[r] = 3 * (down - up);
        }
    }

    private double Knot(int i) => Math.Clamp((i - 3) / (double)spans, 0, 1);
}
