using System.Buffers;

namespace PlankFit.Export.Tables;

/// <summary>
/// Numbers as text with a fixed number of decimals, several times faster than the general formatter because no shortest digits are sought: a plan holds
/// about a million of them. Rounded half away from zero; no "-0", and what is not a finite number is refused.
/// </summary>
public static class FixedPoint
{
    /// <summary>The longest that <see cref="Write"/> writes: a sign, 15 digits and a point.</summary>
    public const int LongestText = 20;

    private static readonly double[] Powers = [1, 10, 100, 1e3, 1e4, 1e5, 1e6];

    /// <summary>Writes the value with exactly that many decimals (1 to 6) and returns the number of bytes.</summary>
    /// <exception cref="NotFiniteNumberException">The value is NaN, infinite, or beyond 1e9.</exception>
    public static int Write(double value, int decimals, Span<byte> into)
    {
        if (!(Math.Abs(value) <= 1e9))
        {
            throw new NotFiniteNumberException(
                "a result is not a number that can be written down",
                value
            );
        }

        long scaled = (long)Math.Round(value * Powers[decimals], MidpointRounding.AwayFromZero);
        ulong rest = (ulong)Math.Abs(scaled);
        // From the right: the decimals, the point, then whole digits down to at least one.
        Span<byte> text = stackalloc byte[LongestText];
        int at = text.Length;
        for (int i = 0; i < decimals; i++)
        {
            (rest, ulong digit) = Math.DivRem(rest, 10UL);
            text[--at] = (byte)('0' + digit);
        }

        text[--at] = (byte)'.';
        do
        {
            (rest, ulong digit) = Math.DivRem(rest, 10UL);
            text[--at] = (byte)('0' + digit);
        } while (rest > 0);

        if (scaled < 0)
        {
            text[--at] = (byte)'-';
        }

        text[at..].CopyTo(into);
        return text.Length - at;
    }

    /// <summary>The same at the end of a buffer.</summary>
    public static void Append(IBufferWriter<byte> buffer, double value, int decimals) =>
        buffer.Advance(Write(value, decimals, buffer.GetSpan(LongestText)));

    /// <summary>The length of a text of <see cref="Write"/> without the zeros at its end, and without its point where nothing is left behind it.</summary>
    public static int Trimmed(ReadOnlySpan<byte> text)
    {
        int length = text.TrimEnd((byte)'0').Length;
        return text[length - 1] == '.' ? length - 1 : length;
    }
}
