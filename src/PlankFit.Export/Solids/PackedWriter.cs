using System.Buffers.Binary;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Export.Solids;

/// <summary>Puts numbers one after the other as a graphics card takes them, little-endian. A vertex has twelve bytes: see <see cref="PackedSolids"/>.</summary>
internal sealed class PackedWriter(byte[] bytes, int at)
{
    public const int VertexBytes = 12;

    /// <summary>Least x, y, z and greatest; nought where there are no points.</summary>
    public static (Vec3 Least, Vec3 Most) Box(IEnumerable<Vec3> points)
    {
        Vec3 least = new(double.MaxValue, double.MaxValue, double.MaxValue),
            most = -least;
        foreach (Vec3 p in points)
        {
            least = new(Math.Min(least.X, p.X), Math.Min(least.Y, p.Y), Math.Min(least.Z, p.Z));
            most = new(Math.Max(most.X, p.X), Math.Max(most.Y, p.Y), Math.Max(most.Z, p.Z));
        }

        return least.X > most.X ? (Vec3.Zero, Vec3.Zero) : (least, most);
    }

    /// <summary>As parts of the box, from 0 to 65535.</summary>
    public static Vec3 Scaled(Vec3 p, Vec3 least, Vec3 most)
    {
        static double Part(double x, double from, double to) =>
            to > from ? 65535 * (x - from) / (to - from) : 0;
        return new(
            Part(p.X, least.X, most.X),
            Part(p.Y, least.Y, most.Y),
            Part(p.Z, least.Z, most.Z)
        );
    }

    public void Raw(ReadOnlySpan<byte> raw)
    {
        raw.CopyTo(bytes.AsSpan(at));
        at += raw.Length;
    }

    public void Int(params ReadOnlySpan<int> numbers)
    {
        foreach (int number in numbers)
        {
            BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(at), number);
            at += 4;
        }
    }

    public void Real(params ReadOnlySpan<double> numbers)
    {
        foreach (double number in numbers)
        {
            BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(at), (float)number);
            at += 4;
        }
    }

    public void Vertex(Vec3 part, int plank, Vec3 normal)
    {
        Span<byte> to = bytes.AsSpan(at, VertexBytes);
        BinaryPrimitives.WriteUInt16LittleEndian(to, (ushort)Math.Round(part.X));
        BinaryPrimitives.WriteUInt16LittleEndian(to[2..], (ushort)Math.Round(part.Y));
        BinaryPrimitives.WriteUInt16LittleEndian(to[4..], (ushort)Math.Round(part.Z));
        BinaryPrimitives.WriteUInt16LittleEndian(to[6..], (ushort)plank);
        to[8] = (byte)(sbyte)Math.Round(127 * normal.X);
        to[9] = (byte)(sbyte)Math.Round(127 * normal.Y);
        to[10] = (byte)(sbyte)Math.Round(127 * normal.Z);
        at += VertexBytes;
    }
}
