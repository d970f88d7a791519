using System.Buffers.Binary;
using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Export.Solids;

/// <summary>
/// Bodies of planks as the bytes that a graphics card is given, little-endian. Head: the letters PFS1, then as 32-bit numbers the planks, vertices, places of
/// triangles and places of lines; then the box as six 32-bit reals, least x, y, z and greatest. Then for every plank, in the order given, where its triangles and its lines
/// begin. Then vertices of twelve bytes: x, y, z as parts of the box from 0 to 65535, the plank's place, the normal in 127ths and a byte that is nought. Then
/// the triangles' places, and the lines', of 32 bits each. A plank of 8 m of hull is so placed to 0.12 mm.
/// </summary>
public static class PackedSolids
{
    private const int HeadBytes = 4 + (4 * 4) + (6 * 4);
    private const int VertexBytes = 12;

    public static byte[] Of(ImmutableArray<PlankSolid> solids)
    {
        int rings = solids.Sum(s => s.Outer.Length),
            vertices = 6 * rings,
            triangles = solids.Sum(s => 3 * ((2 * s.Faces.Length) + (2 * s.Outer.Length))),
            lines = 4 * rings;
        byte[] bytes = new byte[
            HeadBytes + (8 * solids.Length) + (VertexBytes * vertices) + (4 * (triangles + lines))
        ];
        (Vec3 least, Vec3 most) = Box(solids);
        var head = new Writer(bytes, 0);
        head.Raw("PFS1"u8);
        head.Int(solids.Length, vertices, triangles, lines);
        head.Real(least.X, least.Y, least.Z, most.X, most.Y, most.Z);
        int at = HeadBytes + (8 * solids.Length);
        var vertex = new Writer(bytes, at);
        var triangle = new Writer(bytes, at + (VertexBytes * vertices));
        var line = new Writer(bytes, at + (VertexBytes * vertices) + (4 * triangles));
        int triangleAt = 0,
            lineAt = 0,
            first = 0;
        for (int p = 0; p < solids.Length; p++)
        {
            PlankSolid s = solids[p];
            int n = s.Outer.Length;
            head.Int(triangleAt, lineAt);
            void Vertex(Vec3 point, Vec3 normal) =>
                vertex.Vertex(Scaled(point, least, most), p, normal);
            for (int i = 0; i < n; i++)
            {
                Vertex(s.Outer[i], s.Normals[i]);
            }

            for (int i = 0; i < n; i++)
            {
                Vertex(s.Inner[i], -s.Normals[i]);
            }

            foreach ((int a, int b, int c) in s.Faces)
            {
                triangle.Int(first + a, first + b, first + c);
                triangle.Int(first + n + a, first + n + c, first + n + b);
            }

            for (int i = 0; i < n; i++)
            {
                int j = (i + 1) % n,
                    wall = first + (2 * n) + (4 * i);
                Vec3 normal = Wall(s, i, j);
                Vertex(s.Outer[i], normal);
                Vertex(s.Outer[j], normal);
                Vertex(s.Inner[i], normal);
                Vertex(s.Inner[j], normal);
                triangle.Int(wall, wall + 2, wall + 1);
                triangle.Int(wall + 1, wall + 2, wall + 3);
                line.Int(first + i, first + j, first + n + i, first + n + j);
            }

            triangleAt += 3 * ((2 * s.Faces.Length) + (2 * n));
            lineAt += 4 * n;
            first += 6 * n;
        }

        return bytes;
    }

    /// <summary>Out of the plank, of the wall between two vertices of its rings.</summary>
    private static Vec3 Wall(PlankSolid s, int i, int j)
    {
        Vec3 out_ = (s.Outer[j] - s.Outer[i]).Cross(s.Normals[i] + s.Normals[j]);
        return out_.Norm > 0 ? out_.Unit() : s.Normals[i];
    }

    private static (Vec3 Least, Vec3 Most) Box(ImmutableArray<PlankSolid> solids)
    {
        Vec3 least = new(double.MaxValue, double.MaxValue, double.MaxValue),
            most = -least;
        foreach (Vec3 p in solids.SelectMany(s => s.Outer.Concat(s.Inner)))
        {
            least = new(Math.Min(least.X, p.X), Math.Min(least.Y, p.Y), Math.Min(least.Z, p.Z));
            most = new(Math.Max(most.X, p.X), Math.Max(most.Y, p.Y), Math.Max(most.Z, p.Z));
        }

        return solids.IsEmpty ? (Vec3.Zero, Vec3.Zero) : (least, most);
    }

    private static Vec3 Scaled(Vec3 p, Vec3 least, Vec3 most)
    {
        static double Part(double x, double from, double to) =>
            to > from ? 65535 * (x - from) / (to - from) : 0;
        return new(
            Part(p.X, least.X, most.X),
            Part(p.Y, least.Y, most.Y),
            Part(p.Z, least.Z, most.Z)
        );
    }

    private sealed class Writer(byte[] bytes, int at)
    {
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
}
