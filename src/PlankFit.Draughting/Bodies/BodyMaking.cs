using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Bodies;

/// <summary>A body while its faces are put together.</summary>
public sealed class BodyMaking
{
    private readonly ImmutableArray<Vec3>.Builder points = ImmutableArray.CreateBuilder<Vec3>();
    private readonly ImmutableArray<Vec3>.Builder normals = ImmutableArray.CreateBuilder<Vec3>();
    private readonly ImmutableArray<int>.Builder triangles = ImmutableArray.CreateBuilder<int>();

    /// <summary>
    /// Two rings that belong together vertex by vertex, each closed by the same triangles, and a wall between them.
    /// </summary>
    /// <param name="outer">Counter-clockwise seen from outside.</param>
    /// <param name="outward">Of unit length, under each vertex of the outer ring; the inner face's are the same turned round.</param>
    /// <param name="faces">Of the outer ring, by places in it.</param>
    public static BodyMaking Between(
        IReadOnlyList<Vec3> outer,
        IReadOnlyList<Vec3> inner,
        IReadOnlyList<Vec3> outward,
        IReadOnlyList<(int A, int B, int C)> faces
    )
    {
        var made = new BodyMaking();
        int n = outer.Count;
        for (int i = 0; i < n; i++)
        {
            made.Vertex(outer[i], outward[i]);
        }

        for (int i = 0; i < n; i++)
        {
            made.Vertex(inner[i], -outward[i]);
        }

        foreach ((int a, int b, int c) in faces)
        {
            made.Triangle(a, b, c);
            made.Triangle(n + a, n + c, n + b);
        }

        for (int i = 0; i < n; i++)
        {
            int j = (i + 1) % n;
            made.Quad(outer[i], inner[i], inner[j], outer[j], outward[i]);
        }

        return made;
    }

    /// <summary>Four corners, counter-clockwise seen from outside, as two flat triangles; corners may fall together.</summary>
    /// <param name="otherwise">The normal where they all do.</param>
    public void Quad(Vec3 a, Vec3 b, Vec3 c, Vec3 d, Vec3 otherwise)
    {
        Vec3 across = (c - a).Cross(d - b);
        Vec3 normal = across.Norm > 0 ? across.Unit() : otherwise;
        int first = points.Count;
        Vertex(a, normal);
        Vertex(b, normal);
        Vertex(c, normal);
        Vertex(d, normal);
        Triangle(first, first + 1, first + 3);
        Triangle(first + 3, first + 1, first + 2);
    }

    public Body Named(string name) =>
        new(name, points.ToImmutable(), normals.ToImmutable(), triangles.ToImmutable());

    private void Vertex(Vec3 point, Vec3 normal)
    {
        points.Add(point);
        normals.Add(normal);
    }

    /// <summary>None where two of its corners are the same place.</summary>
    private void Triangle(int a, int b, int c)
    {
        if (points[a] != points[b] && points[b] != points[c] && points[c] != points[a])
        {
            triangles.AddRange(a, b, c);
        }
    }
}
