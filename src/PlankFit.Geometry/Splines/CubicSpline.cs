namespace PlankFit.Geometry.Splines;

/// <summary>A scalar cubic spline y(x) through points. Past its ends the end span's cubic goes on.</summary>
public sealed class CubicSpline
{
    private readonly double[] knots;
    private readonly double[][] spans;

    private CubicSpline(double[] knots, double[][] spans)
    {
        this.knots = knots;
        this.spans = spans;
    }

    public double From => knots[0];
    public double To => knots[^1];

    /// <summary>The spline through (x, y), x strictly increasing; not-a-knot ends from six points on, parabolic below.</summary>
    public static CubicSpline Through(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        SplineEnd end = SplineSpans.AdvisedEnd(x.Length);
        return Through(x, y, end, end);
    }

    /// <summary>The spline through (x, y) with the ends as told.</summary>
    public static CubicSpline Through(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        SplineEnd first,
        SplineEnd last
    ) => new(x.ToArray(), SplineSpans.Through(x, y, first, last));

    /// <summary>The cubics through (x, y) with the slopes as told, each span by itself (Hermite): C1, and C2 where the slopes are.</summary>
    public static CubicSpline Through(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> slopes
    ) => new(x.ToArray(), SplineSpans.Through(x, y, slopes));

    public double At(double x)
    {
        (double[] c, double t) = Locate(x);
        return c[0] + (t * (c[1] + (t * (c[2] + (t * c[3])))));
    }

    /// <summary>First derivative.</summary>
    public double Slope(double x)
    {
        (double[] c, double t) = Locate(x);
        return c[1] + (t * ((2 * c[2]) + (3 * t * c[3])));
    }

    /// <summary>Second derivative.</summary>
    public double Bend(double x)
    {
        (double[] c, double t) = Locate(x);
        return (2 * c[2]) + (6 * t * c[3]);
    }

    private (double[] Coefficients, double T) Locate(double x)
    {
        int i = Knots.Span(knots, x);
        return (spans[i], x - knots[i]);
    }
}

/// <summary>Finding one's place among knots.</summary>
public static class Knots
{
    /// <summary>The span that holds x; the first or last one for an x outside.</summary>
    public static int Span(double[] knots, double x)
    {
        int low = 0,
            high = knots.Length - 2;
        while (low < high)
        {
            int middle = (low + high + 1) >> 1;
            if (x < knots[middle])
            {
                high = middle - 1;
            }
            else
            {
                low = middle;
            }
        }

        return low;
    }
}
