namespace PlankFit.Geometry.Surfaces;

/// <summary>
/// h(s, v) = s² f(v/s) with f(t) = t^(m+1) − t^(m+2): a camber that dies with the square of the distance from an apex. For m = 0 it is v(s − v).
/// Value and derivatives to the second order.
/// </summary>
internal readonly record struct Homogeneous(
    double Value,
    double S,
    double V,
    double Ss,
    double Sv,
    double Vv
)
{
    public static Homogeneous At(int m, double s, double v)
    {
        if (m == 0)
        {
            return new(v * (s - v), v, s - (2 * v), 0, 1, -2);
        }

        // At the point itself the second derivatives of the higher terms depend on the direction; mid-bottom stands for all.
        double t = Math.Abs(s) < 1e-9 ? 0.5 : v / s;
        double f = Math.Pow(t, m + 1) * (1 - t);
        double f1 = ((m + 1) * Math.Pow(t, m)) - ((m + 2) * Math.Pow(t, m + 1));
        double f2 = ((m + 1) * m * Math.Pow(t, m - 1)) - ((m + 2) * (m + 1) * Math.Pow(t, m));
        return new(
            s * s * f,
            (2 * s * f) - (v * f1),
            s * f1,
            (2 * f) - (2 * t * f1) + (t * t * f2),
            f1 - (t * f2),
            f2
        );
    }
}
