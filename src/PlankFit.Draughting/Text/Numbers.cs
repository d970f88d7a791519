using System.Globalization;
using System.Runtime.CompilerServices;

namespace PlankFit.Draughting.Text;

/// <summary>
/// The one way in which a number becomes text in a file: a point for the decimals, a fixed number of them at most, no trailing zeros, never "-0",
/// and never a number that is none.
/// </summary>
public static class Numbers
{
    /// <summary>Enough for any double below 1e15 with 9 decimals.</summary>
    public const int LongestText = 32;

    private const double Largest = 1e15;

    /// <param name="value">Finite, and smaller than 1e15.</param>
    /// <param name="decimals">0 to 9.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or too large; the message names it.</exception>
    public static string Text(
        double value,
        int decimals,
        [CallerArgumentExpression(nameof(value))] string what = ""
    )
    {
        Span<byte> text = stackalloc byte[LongestText];
        return System.Text.Encoding.ASCII.GetString(text[..Format(value, decimals, text, what)]);
    }

    /// <summary>The same as <see cref="Text"/>, into a buffer of at least <see cref="LongestText"/> bytes; returns how many were used.</summary>
    public static int Format(
        double value,
        int decimals,
        Span<byte> into,
        [CallerArgumentExpression(nameof(value))] string what = ""
    )
    {
        if (!(Math.Abs(value) < Largest))
        {
            string shown = value.ToString(CultureInfo.InvariantCulture);
            throw new ArgumentOutOfRangeException(
                nameof(value),
                $"{what} is {shown}, which cannot be written as a number."
            );
        }

        value.TryFormat(into, out int length, Picture(decimals), CultureInfo.InvariantCulture);
        if (decimals > 0)
        {
            while (into[length - 1] == '0')
            {
                length--;
            }

            if (into[length - 1] == '.')
            {
                length--;
            }
        }

        if (length == 2 && into[0] == '-' && into[1] == '0')
        {
            into[0] = (byte)'0';
            length = 1;
        }

        return length;
    }

    private static string Picture(int decimals) =>
        decimals switch
        {
            0 => "F0",
            1 => "F1",
            2 => "F2",
            3 => "F3",
            4 => "F4",
            5 => "F5",
            6 => "F6",
            7 => "F7",
            8 => "F8",
            9 => "F9",
            _ => throw new ArgumentOutOfRangeException(
                nameof(decimals),
                decimals,
                "From 0 to 9 decimals can be written."
            ),
        };
}
