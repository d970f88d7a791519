using System.Text;
using System.Text.Json;
using PlankFit.Draughting.Bodies;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Export.Solids;

/// <summary>
/// Keel, what lies behind and fastenings as the bytes that a graphics card is given, little-endian. Head: the letters PFP1, then as 32-bit numbers the bytes of words,
/// vertices, places of triangles and points; then the box as six 32-bit reals, least x, y, z and greatest. Then the words, JSON of UTF-8 made up with blanks to whole
/// fours: the bodies' names and kinds in their order, and by kind what the job lacks. Then vertices as <see cref="PackedSolids"/> has them, with the body's place for the
/// plank's; then the triangles' places of 32 bits; then points, as vertices with the plank's place and, for the normal, what each is for.
/// </summary>
public static class PackedParts
{
    private const int HeadBytes = 4 + (4 * 4) + (6 * 4);

    public static byte[] Of(ShownParts parts)
    {
        byte[] words = Words(parts);
        int vertices = parts.Bodies.Sum(b => b.Points.Length),
            triangles = parts.Bodies.Sum(b => b.Triangles.Length),
            from = HeadBytes + words.Length;
        byte[] bytes = new byte[
            from + (PackedWriter.VertexBytes * (vertices + parts.Points.Length)) + (4 * triangles)
        ];
        (Vec3 least, Vec3 most) = PackedWriter.Box(
            parts.Bodies.SelectMany(b => b.Points).Concat(parts.Points.Select(p => p.At))
        );
        var head = new PackedWriter(bytes, 0);
        head.Raw("PFP1"u8);
        head.Int(words.Length, vertices, triangles, parts.Points.Length);
        head.Real(least.X, least.Y, least.Z, most.X, most.Y, most.Z);
        head.Raw(words);
        var vertex = new PackedWriter(bytes, from);
        var triangle = new PackedWriter(bytes, from + (PackedWriter.VertexBytes * vertices));
        int first = 0;
        for (int b = 0; b < parts.Bodies.Length; b++)
        {
            Body body = parts.Bodies[b];
            for (int i = 0; i < body.Points.Length; i++)
            {
                vertex.Vertex(PackedWriter.Scaled(body.Points[i], least, most), b, body.Normals[i]);
            }

            foreach (int place in body.Triangles)
            {
                triangle.Int(first + place);
            }

            first += body.Points.Length;
        }

        foreach (ShownPoint point in parts.Points)
        {
            triangle.Vertex(
                PackedWriter.Scaled(point.At, least, most),
                point.Plank,
                new((int)point.Use / 127.0, 0, 0)
            );
        }

        return bytes;
    }

    private static byte[] Words(ShownParts parts)
    {
        string json = JsonSerializer.Serialize(
            new
            {
                bodies = parts.Bodies.Select(b => new[] { b.Name, b.Kind }),
                lacking = parts.Lacking.ToDictionary(l => l.Kind, l => l.Words),
            }
        );
        int bytes = Encoding.UTF8.GetByteCount(json);
        return Encoding.UTF8.GetBytes(json + new string(' ', (4 - (bytes % 4)) % 4));
    }
}
