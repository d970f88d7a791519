using System.Buffers;
using System.Runtime.CompilerServices;
using System.Text;

namespace PlankFit.Draughting.Text;

/// <summary>Text being put together as UTF-8 in a rented buffer. Dispose gives the buffer back; use from one thread.</summary>
public sealed class Utf8Text : IDisposable
{
    private byte[] buffer;
    private int length;

    public Utf8Text(int roomFor = 16 * 1024) => buffer = ArrayPool<byte>.Shared.Rent(roomFor);

    public ReadOnlyMemory<byte> Written => buffer.AsMemory(0, length);

    public Utf8Text Add(ReadOnlySpan<byte> ascii)
    {
        Room(ascii.Length);
        ascii.CopyTo(buffer.AsSpan(length));
        length += ascii.Length;
        return this;
    }

    public Utf8Text Add(ReadOnlySpan<char> text)
    {
        Room(Encoding.UTF8.GetMaxByteCount(text.Length));
        length += Encoding.UTF8.GetBytes(text, buffer.AsSpan(length));
        return this;
    }

    public Utf8Text Add(
        double value,
        int decimals,
        [CallerArgumentExpression(nameof(value))] string what = ""
    )
    {
        Room(Numbers.LongestText);
        length += Numbers.Format(value, decimals, buffer.AsSpan(length), what);
        return this;
    }

    public Utf8Text Add(int value) => Add(value, 0);

    public void Dispose()
    {
        byte[] given = buffer;
        buffer = [];
        length = 0;
        if (given.Length > 0)
        {
            ArrayPool<byte>.Shared.Return(given);
        }
    }

    private void Room(int wanted)
    {
        if (buffer.Length - length >= wanted)
        {
            return;
        }

        byte[] larger = ArrayPool<byte>.Shared.Rent(Math.Max(2 * buffer.Length, length + wanted));
        Written.Span.CopyTo(larger);
        ArrayPool<byte>.Shared.Return(buffer);
        buffer = larger;
    }
}
