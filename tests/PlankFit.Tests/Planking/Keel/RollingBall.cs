namespace PlankFit.Tests.Planking.Keel;

/// <summary>
/// Faces found by rolling a ball: the lower parallel of a surface z(x, y) is the lower envelope of all balls of that radius with their middles on it. It knows
/// no normal, no derivative and no Newton step, only heights and golden sections.
/// </summary>
internal static class RollingBall
{
    /// <summary>Height under x of the curve that lies so far below another, square to it.</summary>
    public static double Under(Func<double, double> z, double x, double radius) =>
        Least(a => z(x + a) - Half(radius, a * a), radius);

    /// <summary>Height under (x, y) of the surface that lies so far below another, square to it.</summary>
    public static double Under(Func<double, double, double> z, double x, double y, double radius) =>
        Least(a => Least(b => z(x + a, y + b) - Half(radius, (a * a) + (b * b)), radius), radius);

    /// <summary>The place between two at which a rising function is nought.</summary>
    public static double Crossing(Func<double, double> f, double low, double high)
    {
        Assert.True(f(low) < 0 && f(high) > 0);
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = f(middle) < 0 ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    private static double Half(double radius, double squared) =>
        squared < radius * radius ? Math.Sqrt((radius * radius) - squared) : -1e6;

    /// <summary>The least value by golden section over the ball's width.</summary>
    private static double Least(Func<double, double> f, double radius)
    {
        double ratio = (Math.Sqrt(5) - 1) / 2,
            low = -radius,
            high = radius;
        double a = high - (ratio * (high - low)),
            b = low + (ratio * (high - low));
        double fa = f(a),
            fb = f(b);
        for (int i = 0; i < 44; i++)
        {
            if (fa < fb)
            {
                (high, b, fb) = (b, a, fa);
                a = high - (ratio * (high - low));
                fa = f(a);
            }
            else
            {
                (low, a, fa) = (a, b, fb);
                b = low + (ratio * (high - low));
                fb = f(b);
            }
        }

        return Math.Min(fa, fb);
    }
}
