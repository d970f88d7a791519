using System.Globalization;

namespace PlankFit.Planking.Units;

/// <summary>The one way that a number becomes text: invariant, never "-0", never NaN.</summary>
public static class NumberText
{
    /// <summary>At most that many decimals (0 to 9), zeros at the end dropped, halves away from zero: 12.5, 12, -0.25.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite, or beyond 1e15.</exception>
    public static string Trimmed(double value, int decimals) => Fixed(value, decimals, '#');

    /// <summary>Exactly that many decimals (0 to 9): 12.50.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite, or beyond 1e15.</exception>
    public static string Padded(double value, int decimals) => Fixed(value, decimals, '0');

    /// <summary>So many of what <paramref name="one"/> is one of: 1 plank, 34 planks, no "plank(s)" that leaves the reader to choose.</summary>
    /// <param name="one">A word whose plural has an s at its end.</param>
    public static string Count(int number, string one) =>
        string.Create(CultureInfo.InvariantCulture, $"{number} {one}{(number == 1 ? "" : "s")}");

    private static string Fixed(double value, int decimals, char place)
    {
        if (!double.IsFinite(value) || Math.Abs(value) > 1e15)
        {
            throw new ArgumentOutOfRangeException(
                nameof(value),
                value,
                "only finite numbers up to 1e15 are written"
            );
        }

        // Decimal keeps what the double shows in 15 digits, so that 0.125 is a true half at two decimals.
        decimal rounded = Math.Round((decimal)value, decimals, MidpointRounding.AwayFromZero);
        string format = decimals == 0 ? "0" : "0." + new string(place, decimals);
        return (rounded == 0 ? 0m : rounded).ToString(format, CultureInfo.InvariantCulture);
    }
}
