using System.Buffers;
using System.Runtime.CompilerServices;
using System.Text;

namespace PlankFit.Draughting;

/// <summary>Text being put together as UTF-8 in a rented buffer. Dispose gives the buffer back; use from one thread.</summary>
public sealed class Utf8Text : IDisposable
{
    private byte[] _buffer;
    private int _length;

    public Utf8Text(int roomFor = 16 * 1024) => _buffer = ArrayPool<byte>.Shared.Rent(roomFor);

    public ReadOnlyMemory<byte> Written => _buffer.AsMemory(0, _length);

    public Utf8Text Add(ReadOnlySpan<byte> ascii)
    {
        Room(ascii.Length);
        ascii.CopyTo(_buffer.AsSpan(_length));
        _length += ascii.Length;
        return this;
    }

    public Utf8Text Add(ReadOnlySpan<char> text)
    {
        Room(Encoding.UTF8.GetMaxByteCount(text.Length));
        _length += Encoding.UTF8.GetBytes(text, _buffer.AsSpan(_length));
        return this;
    }

    public Utf8Text Add(
        double value,
        int decimals,
        [CallerArgumentExpression(nameof(value))] string what = ""
    )
    {
        Room(Numbers.LongestText);
        _length += Numbers.Format(value, decimals, _buffer.AsSpan(_length), what);
        return this;
    }

    public Utf8Text Add(int value) => Add(value, 0);

    public void Dispose()
    {
        var given = _buffer;
        _buffer = [];
        _length = 0;
        if (given.Length > 0)
        {
            ArrayPool<byte>.Shared.Return(given);
        }
    }

    private void Room(int wanted)
    {
        if (_buffer.Length - _length >= wanted)
        {
            return;
        }

        var larger = ArrayPool<byte>.Shared.Rent(Math.Max(2 * _buffer.Length, _length + wanted));
        Written.Span.CopyTo(larger);
        ArrayPool<byte>.Shared.Return(_buffer);
        _buffer = larger;
    }
}
