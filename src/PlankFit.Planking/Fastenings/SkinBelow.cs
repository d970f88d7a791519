using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Fastenings;

/// <summary>
/// What a skin must miss of those that it lies on: seams and joints of the next one, fastenings of all. Carried square from surface to surface (the same
/// parameters), so that distances are those on the skin above.
/// </summary>
internal sealed class SkinBelow
{
    private const double NodeMm = 60;
    private const double ReachMm = 80;

    private readonly ImmutableArray<(string What, (Uv Uv, Vec3 At)[] Nodes)> lines;
    private readonly ISurface surface;

    /// <summary>Of the skin that lies on it.</summary>
    public ISurface Surface => surface;

    private SkinBelow(
        ImmutableArray<(string What, (Uv Uv, Vec3 At)[] Nodes)> lines,
        ISurface surface
    )
    {
        (this.lines, this.surface) = (lines, surface);
    }

    /// <param name="below">The skin next below; null for the first.</param>
    /// <param name="on">The surface of the skin above.</param>
    public static SkinBelow Of(PlankLayerPlan? below, Side side, JointPlan joints, ISurface on)
    {
        (Uv, Vec3) Raised(Uv uv) => (uv, on.At(uv.U, uv.V).P);
        ImmutableArray<(string, (Uv, Vec3)[])>.Builder lines = ImmutableArray.CreateBuilder<(
            string,
            (Uv, Vec3)[]
        )>();
        foreach (Plank plank in below?.On(side) ?? [])
        {
            if (plank.AfterEdge.Exists)
            {
                lines.Add(
                    (
                        "a seam of the skin below",
                        [.. Nodes(plank.AfterEdge.Flat).Select(p => Raised(plank.Map.On(p)))]
                    )
                );
            }

            foreach (PlankJoint joint in joints.On(plank.Id)?.Joints ?? [])
            {
                foreach (ImmutableArray<Vec2> line in new[] { joint.OuterLine, joint.InnerLine })
                {
                    // Both sides from the same end: port's runs the other way.
                    ImmutableArray<Vec2> from = side == Side.Port ? [.. line.Reverse()] : line;
                    lines.Add(
                        (
                            "a joint of the skin below",
                            [.. Nodes(from).Select(p => Raised(plank.Map.On(p)))]
                        )
                    );
                }
            }
        }

        return new(lines.ToImmutable(), on);
    }

    /// <summary>Places of fastenings of the skins below, on the surface of this one.</summary>
    public (Uv Uv, Vec3 At)[] Raised(IEnumerable<Uv> fastened) =>
        [.. fastened.Select(uv => (uv, surface.At(uv.U, uv.V).P))];

    /// <summary>Seams and joints in the frame of a plank that lies on them.</summary>
    public ImmutableArray<(string What, Vec2[] Line)> LinesUnder(FramedPlank plank)
    {
        ImmutableArray<(string, Vec2[])>.Builder under = ImmutableArray.CreateBuilder<(
            string,
            Vec2[]
        )>();
        foreach ((string what, (Uv, Vec3)[] nodes) in lines)
        {
            var run = new List<Vec2>();
            foreach ((Uv uv, Vec3 at) in nodes)
            {
                if (plank.Flat(uv, at, ReachMm) is { } flat)
                {
                    run.Add(flat);
                }
                else
                {
                    under.Add((what, [.. run]));
                    run.Clear();
                }
            }

            under.Add((what, [.. run]));
        }

        return [.. under.Where(l => l.Item2.Length > 1)];
    }

    /// <summary>Both ends and points between, none further from the next than a node's step: what is a geodesic is then straight between them to 0.01 mm.</summary>
    private static IEnumerable<Vec2> Nodes(ImmutableArray<Vec2> line)
    {
        Vec2 last = line[0];
        yield return last;
        for (int i = 1; i < line.Length; i++)
        {
            bool due = i == line.Length - 1 || line[i + 1].ChordTo(last) > NodeMm;
            if (due)
            {
                int parts = Math.Max(1, (int)Math.Ceiling(line[i].ChordTo(last) / NodeMm));
                for (int k = 1; k <= parts; k++)
                {
                    yield return last + ((double)k / parts * (line[i] - last));
                }

                last = line[i];
            }
        }
    }
}
