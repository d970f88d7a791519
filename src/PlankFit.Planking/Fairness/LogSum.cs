namespace PlankFit.Planking.Fairness;

/// <summary>Sums of numbers that are known by their logarithms.</summary>
internal static class LogSum
{
    /// <summary>ln of the sum of e^v; minus infinity for none.</summary>
    public static double Of(ReadOnlySpan<double> values)
    {
        double most = double.NegativeInfinity;
        foreach (double v in values)
        {
            most = Math.Max(most, v);
        }

        if (double.IsNegativeInfinity(most))
        {
            return most;
        }

        double sum = 0;
        foreach (double v in values)
        {
            sum += Math.Exp(v - most);
        }

        return most + Math.Log(sum);
    }
}
