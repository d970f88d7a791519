using System.Buffers;
using System.Collections.Immutable;
using System.Text.Json;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Export.Tables;

/// <summary>Numbers and points for a JSON file, in fixed point.</summary>
internal sealed class JsonNumbers(Utf8JsonWriter json)
{
    /// <summary>Of a millimetre: the contract asks for at least four, and the finest tolerance that a reader may hold a point to is 0.001 mm.</summary>
    private const int PointDecimals = 4;

    private readonly ArrayBufferWriter<byte> text = new(64 * 1024);

    /// <summary>Zeros at the end are dropped: 46.2, 150.</summary>
    public void Number(string name, double value, int decimals)
    {
        json.WritePropertyName(name);
        Span<byte> digits = stackalloc byte[FixedPoint.LongestText];
        json.WriteRawValue(digits[..Trimmed(value, decimals, digits)], true);
    }

    /// <summary>Two numbers on one line: [17, 17.2].</summary>
    public void Pair(string name, double first, double second, int decimals)
    {
        Span<byte> pair = stackalloc byte[(2 * FixedPoint.LongestText) + 3];
        pair[0] = (byte)'[';
        int at = 1 + Trimmed(first, decimals, pair[1..]);
        pair[at++] = (byte)',';
        at += Trimmed(second, decimals, pair[at..]);
        pair[at++] = (byte)']';
        json.WritePropertyName(name);
        json.WriteRawValue(pair[..at], true);
    }

    public void NumberOrNull(string name, double? value, int decimals)
    {
        if (value is { } number)
        {
            Number(name, number, decimals);
        }
        else
        {
            json.WriteNull(name);
        }
    }

    /// <summary>Areas, mm², which may be larger than a fixed-point length can be.</summary>
    public void Area(string name, double mm2)
    {
        if (!double.IsFinite(mm2))
        {
            throw new NotFiniteNumberException(
                "an area is not a number that can be written down",
                mm2
            );
        }

        json.WriteNumber(name, Math.Round((decimal)mm2, 2));
    }

    public void Points(string name, ImmutableArray<Vec3> points)
    {
        text.ResetWrittenCount();
        Open();
        for (int i = 0; i < points.Length; i++)
        {
            Separate(i);
            Triple(points[i]);
        }

        Close(name);
    }

    public void Points(string name, ImmutableArray<Vec2> points)
    {
        text.ResetWrittenCount();
        Open();
        for (int i = 0; i < points.Length; i++)
        {
            Separate(i);
            Pair(points[i]);
        }

        Close(name);
    }

    public void Point(string name, Vec2 point)
    {
        text.ResetWrittenCount();
        Pair(point);
        json.WritePropertyName(name);
        json.WriteRawValue(text.WrittenSpan, true);
    }

    public void Point(string name, Vec3 point)
    {
        text.ResetWrittenCount();
        Triple(point);
        json.WritePropertyName(name);
        json.WriteRawValue(text.WrittenSpan, true);
    }

    private void Triple(Vec3 p)
    {
        Span<byte> into = text.GetSpan((3 * FixedPoint.LongestText) + 4);
        into[0] = (byte)'[';
        int at = 1 + FixedPoint.Write(p.X, PointDecimals, into[1..]);
        into[at++] = (byte)',';
        at += FixedPoint.Write(p.Y, PointDecimals, into[at..]);
        into[at++] = (byte)',';
        at += FixedPoint.Write(p.Z, PointDecimals, into[at..]);
        into[at++] = (byte)']';
        text.Advance(at);
    }

    private void Pair(Vec2 p)
    {
        Span<byte> into = text.GetSpan((2 * FixedPoint.LongestText) + 3);
        into[0] = (byte)'[';
        int at = 1 + FixedPoint.Write(p.X, PointDecimals, into[1..]);
        into[at++] = (byte)',';
        at += FixedPoint.Write(p.Y, PointDecimals, into[at..]);
        into[at++] = (byte)']';
        text.Advance(at);
    }

    private static int Trimmed(double value, int decimals, Span<byte> into) =>
        FixedPoint.Trimmed(into[..FixedPoint.Write(value, decimals, into)]);

    private void Open() => Put((byte)'[');

    private void Separate(int index)
    {
        if (index > 0)
        {
            Put((byte)',');
        }
    }

    private void Close(string name)
    {
        Put((byte)']');
        json.WritePropertyName(name);
        json.WriteRawValue(text.WrittenSpan, true);
    }

    private void Put(byte character)
    {
        text.GetSpan(1)[0] = character;
        text.Advance(1);
    }
}
