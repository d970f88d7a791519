using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

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
            Outline = Turned(outline, first),
            FlatNet = Turned(net, first),
            FlatCut = [.. p.FlatCut.Reverse().Select(Mirror)],
            ForwardEdge = Edge(p.ForwardEdge),
            AfterEdge = Edge(p.AfterEdge),
            Ends = [.. p.Ends.Select(End)],
            Map = p.Map.OfPort(),
            Marks =
            [
                .. p.Marks.Select(m => m with { At = Mirror(m.At), Inward = Mirror(m.Inward) }),
            ],
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
            CutDegrees = 180 - e.CutDegrees,
            BevelAtLeastN = e.BevelAtGreatestN,
            BevelAtGreatestN = e.BevelAtLeastN,
            NetLine = Line(e.NetLine),
            Outline = [.. e.Outline.Reverse().Select(v => v.MirroredInY())],
            OuterLine = Line(e.OuterLine),
            InnerLine = Line(e.InnerLine),
        };

    private static ImmutableArray<Vec2> Line(ImmutableArray<Vec2> line) =>
        [.. line.Reverse().Select(Mirror)];

    private static Vec2 Mirror(Vec2 p) => new(p.X, -p.Y);

    private static ImmutableArray<T> Turned<T>(ImmutableArray<T> points, int first) =>
        [.. points.Skip(first), .. points.Take(first)];
}
