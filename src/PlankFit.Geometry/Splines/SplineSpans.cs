namespace PlankFit.Geometry.Splines;

/// <summary>
/// A C2 cubic spline through points, in power form: on span i, y = c0 + c1 t + c2 t² + c3 t³ with t = x − knot i.
/// The map from ordinates to coefficients is linear, so rows on the same knots and ends may be added: the sum is the spline of the sum.
/// </summary>
/// <remarks>Slope form of the tridiagonal system: de Boor, A Practical Guide to Splines, ch. IV (from memory).</remarks>
public static class SplineSpans
{
    /// <summary>The end condition advised for n points: parabola below six, not-a-knot from six on.</summary>
    public static SplineEnd AdvisedEnd(int n) => n < 6 ? SplineEnd.Parabola : SplineEnd.NotAKnot;

    /// <summary>Coefficients of the spline through (x, y); x strictly increasing, at least two points.</summary>
    /// <returns>One row of four a span.</returns>
    public static double[][] Through(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        SplineEnd first,
        SplineEnd last
    )
    {
        (double[] h, double[] slope) = Chords(x, y);
        return Spans(y, h, slope, Slopes(h, slope, first, last));
    }

    /// <summary>Coefficients of the cubics through (x, y) with the slopes as told, one row of four a span.</summary>
    public static double[][] Through(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> slopes
    )
    {
        (double[] h, double[] slope) = Chords(x, y);
        return slopes.Length == x.Length
            ? Spans(y, h, slope, slopes)
            : throw new ArgumentException(
                $"{x.Length} points need as many slopes; given {slopes.Length}"
            );
    }

    /// <summary>Lengths of the spans along x, and slopes of their chords.</summary>
    private static (double[] Lengths, double[] Slopes) Chords(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y
    )
    {
        int n = x.Length;
        if (n < 2 || y.Length != n)
        {
            throw new ArgumentException(
                $"a spline needs two points or more, one ordinate each; given {n} and {y.Length}"
            );
        }

        double[] h = new double[n - 1],
            slope = new double[n - 1];
        for (int i = 0; i < n - 1; i++)
        {
            h[i] = x[i + 1] - x[i];
            if (!(h[i] > 0))
            {
                throw new ArgumentException(
                    $"knots must increase: {x[i]} is followed by {x[i + 1]}"
                );
            }

            slope[i] = (y[i + 1] - y[i]) / h[i];
        }

        return (h, slope);
    }

    private static double[][] Spans(
        ReadOnlySpan<double> y,
        double[] h,
        double[] slope,
        ReadOnlySpan<double> m
    )
    {
        double[][] spans = new double[h.Length][];
        for (int i = 0; i < h.Length; i++)
        {
            double c2 = ((3 * slope[i]) - (2 * m[i]) - m[i + 1]) / h[i];
            double c3 = (m[i] + m[i + 1] - (2 * slope[i])) / (h[i] * h[i]);
            spans[i] = [y[i], m[i], c2, c3];
        }

        return spans;
    }

    private static double[] Slopes(double[] h, double[] slope, SplineEnd first, SplineEnd last)
    {
        int n = h.Length + 1;
        if (n == 2)
        {
            // One span: a straight line unless an end is told to be flat, then the cubic that honours it.
            double s = slope[0];
            double m0 = first == SplineEnd.Flat ? 0 : s,
                m1 = last == SplineEnd.Flat ? 0 : s;
            return [m0, m1];
        }

        double[] lower = new double[n],
            diagonal = new double[n],
            upper = new double[n],
            right = new double[n];
        for (int i = 1; i < n - 1; i++)
        {
            lower[i] = h[i];
            diagonal[i] = 2 * (h[i - 1] + h[i]);
            upper[i] = h[i - 1];
            right[i] = 3 * ((h[i] * slope[i - 1]) + (h[i - 1] * slope[i]));
        }

        (diagonal[0], upper[0], right[0]) = EndRow(first, h[0], h[1], slope[0], slope[1], n);
        (diagonal[n - 1], lower[n - 1], right[n - 1]) = EndRow(
            last,
            h[n - 2],
            h[n - 3],
            slope[n - 2],
            slope[n - 3],
            n
        );
        for (int i = 1; i < n; i++)
        {
            double f = lower[i] / diagonal[i - 1];
            diagonal[i] -= f * upper[i - 1];
            right[i] -= f * right[i - 1];
        }

        double[] m = new double[n];
        m[n - 1] = right[n - 1] / diagonal[n - 1];
        for (int i = n - 2; i >= 0; i--)
        {
            m[i] = (right[i] - (upper[i] * m[i + 1])) / diagonal[i];
        }

        return m;
    }

    private static (double Diagonal, double Beside, double Right) EndRow(
        SplineEnd end,
        double h0,
        double h1,
        double s0,
        double s1,
        int n
    )
    {
        double both = h0 + h1;
        return end switch
        {
            SplineEnd.Flat => (1, 0, 0),
            // With three points not-a-knot leaves one parabola, which is what its slope at the end says.
            SplineEnd.NotAKnot when n > 3 => (
                h1,
                both,
                (((h0 + (2 * both)) * h1 * s0) + (h0 * h0 * s1)) / both
            ),
            _ => (1, 0, s0 + ((s0 - s1) * h0 / both)),
        };
    }
}
