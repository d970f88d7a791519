using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Building;

/// <summary>A port plank is its starboard twin mirrored in the hull's middle plane: y and n negated, the order of vertices reversed.</summary>
internal static class PortTwin
{
    public static Plank Of(Plank p)
    {
        ImmutableArray<Vec2> net = [.. p.FlatNet.Reverse().Select(Mirror)];
        ImmutableArray<Vec3> outline = [.. p.Outline.Reverse().Select(v => v.MirroredInY())];
        int first = FirstVertex(p, net);
        return p with
        {
            Id = p.Id.Twin,
            Form = p.Form with
            {
                Shape = new(
                    Turned(outline, first),
                    Turned(net, first),
                    [.. p.FlatCut.Reverse().Select(Mirror)],
                    Edge(p.ForwardEdge),
                    Edge(p.AfterEdge)
                ),
                Ends = [.. p.Ends.Select(End)],
                Marks =
                [
                    .. p.Marks.Select(m => m with { At = Mirror(m.At), Inward = Mirror(m.Inward) }),
                ],
            },
            Map = p.Map.OfPort(),
        };
    }

    /// <summary>The inboard vertex with the least n: to port that is the after seam's inboard end.</summary>
    private static int FirstVertex(Plank p, ImmutableArray<Vec2> net)
    {
        if (!p.AfterEdge.Exists)
        {
            return 0;
        }

        Vec2 corner = Mirror(p.AfterEdge.Flat[0]);
        int best = 0;
        for (int i = 0; i < net.Length; i++)
        {
            best = net[i].ChordTo(corner) < net[best].ChordTo(corner) ? i : best;
        }

        return best;
    }

    private static PlankEdge Edge(PlankEdge e) =>
        e with
        {
            Seam = [.. e.Seam.Select(v => v.MirroredInY())],
            Flat = [.. e.Flat.Select(Mirror)],
            Neighbour = e.Neighbour?.Twin,
        };

    private static PlankEnd End(PlankEnd e) =>
        e with
        {
            Angles = new(180 - e.CutDegrees, e.BevelDegrees, e.BevelAtGreatestN, e.BevelAtLeastN),
            Lines = new(
                Line(e.NetLine),
                [.. e.Outline.Reverse().Select(v => v.MirroredInY())],
                Line(e.OuterLine),
                Line(e.InnerLine)
            ),
        };

    private static ImmutableArray<Vec2> Line(ImmutableArray<Vec2> line) =>
        [.. line.Reverse().Select(Mirror)];

    private static Vec2 Mirror(Vec2 p) => new(p.X, -p.Y);

    private static ImmutableArray<T> Turned<T>(ImmutableArray<T> points, int first) =>
        [.. points.Skip(first), .. points.Take(first)];
}
