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
    private const int VertexBytes = PackedWriter.VertexBytes;

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
        var head = new PackedWriter(bytes, 0);
        head.Raw("PFS1"u8);
        head.Int(solids.Length, vertices, triangles, lines);
        head.Real(least.X, least.Y, least.Z, most.X, most.Y, most.Z);
        int at = HeadBytes + (8 * solids.Length);
        var vertex = new PackedWriter(bytes, at);
        var triangle = new PackedWriter(bytes, at + (VertexBytes * vertices));
        var line = new PackedWriter(bytes, at + (VertexBytes * vertices) + (4 * triangles));
        int triangleAt = 0,
            lineAt = 0,
            first = 0;
        for (int p = 0; p < solids.Length; p++)
        {
            PlankSolid s = solids[p];
            int n = s.Outer.Length;
            head.Int(triangleAt, lineAt);
            void Vertex(Vec3 point, Vec3 normal) =>
                vertex.Vertex(PackedWriter.Scaled(point, least, most), p, normal);
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

    private static (Vec3 Least, Vec3 Most) Box(ImmutableArray<PlankSolid> solids) =>
        PackedWriter.Box(solids.SelectMany(s => s.Outer.Concat(s.Inner)));
}
