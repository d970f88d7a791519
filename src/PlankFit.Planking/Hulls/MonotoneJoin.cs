using MathNet.Numerics.Interpolation;

namespace PlankFit.Planking.Hulls;

/// <summary>
/// Readings joined along the hull so that nothing is made up between them: the slopes are those of the monotone cubic (Fritsch and Carlson 1980, by MathNet),
/// and between two readings a quintic runs with no second derivative at either end. It goes past no reading, and slope and curvature do not jump. Beyond the
/// outermost readings their value is held.
/// </summary>
internal sealed class MonotoneJoin
{
    private readonly double[] x,
        y,
        slope;

    private MonotoneJoin(double[] x, double[] y, double[] slope) =>
        (this.x, this.y, this.slope) = (x, y, slope);

    /// <param name="x">Strictly rising, one at least.</param>
    public static MonotoneJoin Through(double[] x, double[] y)
    {
        if (x.Length == 1)
        {
            return new(x, y, [0]);
        }

        // One place more at either end, at the same value, so that the curve runs level into what is held.
        double before = x[0] - (x[1] - x[0]),
            beyond = x[^1] + (x[^1] - x[^2]);
        var monotone = CubicSpline.InterpolatePchip([before, .. x, beyond], [y[0], .. y, y[^1]]);
        return new(x, y, [.. x.Select((at, i) => Held(monotone.Differentiate(at), x, y, i))]);
    }

    /// <summary>
    /// Fritsch and Carlson let a slope be three times the flatter neighbour's; this quintic runs monotone where neither end has more than twice its own
    /// (then its slope is least at 2 - 30 t² (1 - t)² > 0), and would go past a reading by up to a hundredth of the step otherwise.
    /// </summary>
    private static double Held(double slope, double[] x, double[] y, int i)
    {
        double most = double.PositiveInfinity;
        foreach (int from in new[] { i - 1, i })
        {
            if (from >= 0 && from + 1 < x.Length)
            {
                double rise = Math.Abs((y[from + 1] - y[from]) / (x[from + 1] - x[from]));
                most = Math.Min(most, 2 * rise);
            }
        }

        return Math.Clamp(slope, -most, most);
    }

    public double At(double at)
    {
        if (at <= x[0] || at >= x[^1])
        {
            return at <= x[0] ? y[0] : y[^1];
        }

        (int i, double h, double t) = Span(at);
        double t3 = t * t * t,
            rise = t3 * (10 + (t * ((6 * t) - 15)));
        return y[i]
            + ((y[i + 1] - y[i]) * rise)
            + (h * slope[i] * (t + (t3 * (-6 + (t * (8 - (3 * t)))))))
            + (h * slope[i + 1] * t3 * (-4 + (t * (7 - (3 * t)))));
    }

    public double SlopeAt(double at)
    {
        if (at <= x[0] || at >= x[^1])
        {
            return 0;
        }

        (int i, double h, double t) = Span(at);
        double t2 = t * t;
        return ((y[i + 1] - y[i]) / h * 30 * t2 * (1 - t) * (1 - t))
            + (slope[i] * (1 + (t2 * (-18 + (t * (32 - (15 * t)))))))
            + (slope[i + 1] * t2 * (-12 + (t * (28 - (15 * t)))));
    }

    private (int Index, double Length, double Part) Span(double at)
    {
        int i = Array.BinarySearch(x, at);
        i = Math.Clamp(i < 0 ? ~i - 1 : i, 0, x.Length - 2);
        double h = x[i + 1] - x[i];
        return (i, h, (at - x[i]) / h);
    }
}
