using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Bodies;

/// <summary>A closed body of flat triangles, mm: x to the right of who looks along z, or however its maker has it. Every face has vertices of its own, so that its edges stay sharp.</summary>
/// <param name="Normals">Of unit length, outward, one a vertex.</param>
/// <param name="Triangles">Three places of vertices each, counter-clockwise seen from outside.</param>
public sealed record Body(
    string Name,
    ImmutableArray<Vec3> Points,
    ImmutableArray<Vec3> Normals,
    ImmutableArray<int> Triangles
)
{
    /// <summary>What it is one of; bodies of one kind have one colour.</summary>
    public string Kind { get; init; } = "";

    /// <summary>What is told of it besides: words or numbers under their names.</summary>
    public ImmutableArray<(string Name, object Value)> Told { get; init; } = [];

    /// <summary>By the divergence theorem, a third of the sum of P · n over its faces, mm³.</summary>
    public double VolumeMm3()
    {
        double six = 0;
        for (int i = 0; i < Triangles.Length; i += 3)
        {
            six += Points[Triangles[i]]
                .Dot(Points[Triangles[i + 1]].Cross(Points[Triangles[i + 2]]));
        }

        return six / 6;
    }
}
