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
    private readonly ImmutableArray<(Uv Uv, Vec3 At)> spots;

    private SkinBelow(
        ImmutableArray<(string What, (Uv Uv, Vec3 At)[] Nodes)> lines,
        ImmutableArray<(Uv Uv, Vec3 At)> spots
    )
    {
        (this.lines, this.spots) = (lines, spots);
    }

    /// <param name="below">The skin next below; null for the first.</param>
    /// <param name="fastened">Places of the fastenings of all skins below.</param>
    /// <param name="on">The surface of the skin above.</param>
    public static SkinBelow Of(
        PlankLayerPlan? below,
        Side side,
        JointPlan? joints,
        IEnumerable<Uv> fastened,
        ISurface on
    )
    {
        (Uv, Vec3) Raised(Uv uv) => (uv, on.At(uv.U, uv.V).P);
        var lines = ImmutableArray.CreateBuilder<(string, (Uv, Vec3)[])>();
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

            foreach (PlankJoint joint in joints?.On(plank.Id)?.Joints ?? [])
            {
                foreach (ImmutableArray<Vec2> line in new[] { joint.OuterLine, joint.InnerLine })
                {
                    lines.Add(
                        (
                            "a joint of the skin below",
                            [.. Nodes(line).Select(p => Raised(plank.Map.On(p)))]
                        )
                    );
                }
            }
        }

        return new(lines.ToImmutable(), [.. fastened.Select(Raised)]);
    }

    /// <summary>Adds to a plank's clearance what lies under it.</summary>
    public void KeepFrom(Clearance clear, FramedPlank plank, FasteningRule rule)
    {
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
                    clear.KeepFromLine(run, rule.BelowMm, what);
                    run.Clear();
                }
            }

            clear.KeepFromLine(run, rule.BelowMm, what);
        }

        foreach ((Uv uv, Vec3 at) in spots)
        {
            if (plank.Flat(uv, at, rule.MissMm) is { } flat)
            {
                clear.KeepFrom(flat, rule.MissMm, "a fastening of a skin below");
            }
        }
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
