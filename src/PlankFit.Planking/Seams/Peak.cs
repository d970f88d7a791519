namespace PlankFit.Planking.Seams;

/// <summary>The greatest value of a smooth function.</summary>
internal static class Peak
{
    /// <summary>Over [from, to]: the greatest of its values at even places, or at the top of the parabola through the best of them and its two neighbours.</summary>
    public static double Of(Func<double, double> f, double from, double to, int steps)
    {
        double h = (to - from) / steps,
            most = double.NegativeInfinity;
        int at = 0;
        double[] values = new double[steps + 1];
        for (int i = 0; i <= steps; i++)
        {
            values[i] = f(from + (h * i));
            (most, at) = values[i] > most ? (values[i], i) : (most, at);
        }

        if (at == 0 || at == steps)
        {
            return most;
        }

        double rise = (values[at + 1] - values[at - 1]) / 2,
            bend = values[at + 1] - (2 * most) + values[at - 1];
        return bend < 0 ? Math.Max(most, f(from + (h * (at - (rise / bend))))) : most;
    }
}
