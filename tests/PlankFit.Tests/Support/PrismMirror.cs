using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;

namespace PlankFit.Tests.Support;

/// <summary>A port plank is its starboard twin with n negated and the order of vertices reversed; forward stays forward.</summary>
internal static class PrismMirror
{
    public static Plank ToPort(Plank p)
    {
        int first = First(p);
        return p with
        {
            Id = ToPort(p.Id),
            Form = p.Form with
            {
                Shape = new(
                    Turned(p.Outline, first, v => v.MirroredInY()),
                    Turned(p.FlatNet, first, Negated),
                    Turned(p.FlatCut, FirstOf(p.FlatCut), Negated),
                    Edge(p.ForwardEdge),
                    Edge(p.AfterEdge)
                ),
                Ends = [.. p.Ends.Select(End)],
                Marks =
                [
                    .. p.Marks.Select(m =>
                        m with
                        {
                            At = Negated(m.At),
                            Inward = Negated(m.Inward),
                        }
                    ),
                ],
            },
        };
    }

    private static PlankId ToPort(PlankId starboard) => starboard with { Side = Side.Port };

    private static Vec2 Negated(Vec2 v) => new(v.X, 0 - v.Y);

    private static int First(Plank p) => FirstOf(p.FlatNet);

    /// <summary>The vertex that has the least n once n is negated, the most inboard where several share it.</summary>
    private static int FirstOf(ImmutableArray<Vec2> flat)
    {
        double most = flat.Max(v => v.Y);
        return Enumerable
            .Range(0, flat.Length)
            .Where(i => flat[i].Y > most - 1e-7)
            .MinBy(i => flat[i].X);
    }

    private static ImmutableArray<T> Turned<T>(
        ImmutableArray<T> points,
        int first,
        Func<T, T> mirrored
    ) =>
        [
            .. Enumerable
                .Range(0, points.Length)
                .Select(k => mirrored(points[(first - k + points.Length) % points.Length])),
        ];

    private static PlankEdge Edge(PlankEdge e) =>
        e with
        {
            Seam = [.. e.Seam.Select(v => v.MirroredInY())],
            Flat = [.. e.Flat.Select(Negated)],
            Neighbour = e.Neighbour is { } starboard ? ToPort(starboard) : null,
        };

    private static PlankEnd End(PlankEnd e) =>
        e with
        {
            Angles = new(180 - e.CutDegrees, e.BevelDegrees, e.BevelAtGreatestN, e.BevelAtLeastN),
            Lines = new(
                [.. e.NetLine.Reverse().Select(Negated)],
                [.. e.Outline.Reverse().Select(v => v.MirroredInY())],
                [.. e.OuterLine.Reverse().Select(Negated)],
                [.. e.InnerLine.Reverse().Select(Negated)]
            ),
        };
}
