using System.Globalization;

namespace PlankFit.Planking.Units;

/// <summary>Whole numbers with a fraction in lowest terms, as a rule is read.</summary>
public static class FractionText
{
    /// <summary>parts/denominator as <c>12 3/8</c>, <c>3/8</c>, <c>12</c> or <c>0</c>; parts not negative.</summary>
    public static string Mixed(long parts, int denominator)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(parts);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(denominator);
        long whole = parts / denominator;
        long over = parts % denominator;
        if (over == 0)
        {
            return whole.ToString(CultureInfo.InvariantCulture);
        }

        long divisor = GreatestCommonDivisor(over, denominator);
        string fraction = string.Create(
            CultureInfo.InvariantCulture,
            $"{over / divisor}/{denominator / divisor}"
        );
        return whole == 0
            ? fraction
            : string.Create(CultureInfo.InvariantCulture, $"{whole} {fraction}");
    }

    private static long GreatestCommonDivisor(long a, long b) =>
        b == 0 ? a : GreatestCommonDivisor(b, a % b);
}
