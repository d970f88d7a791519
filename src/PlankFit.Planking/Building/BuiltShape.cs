using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Building;

/// <summary>The net boundary of a plank put together from its edges and ends, counter-clockwise seen from outside.</summary>
internal sealed class BuiltShape
{
    public BuiltShape(
        PlankSide? ahead,
        PlankSide? behind,
        List<EndPiece> outer,
        List<EndPiece> inner
    )
    {
        (Outer, Inner) = (outer, inner);
        var net = new List<Vec2>();
        var space = new List<Vec3>();
        void Add(IReadOnlyList<Vec2> n, IReadOnlyList<Vec3> p)
        {
            // Each line brings its first point; its last is the next one's first.
            for (int i = 0; i + 1 < n.Count; i++)
            {
                net.Add(n[i]);
                space.Add(p[i]);
            }
        }

        if (ahead is not null)
        {
            Add(ahead.Flat, ahead.Space);
        }

        outer.ForEach(e => Add(e.Net, e.Space));
        if (behind is not null)
        {
            Add([.. behind.Flat.Reverse()], [.. behind.Space.Reverse()]);
        }

        inner.ForEach(e => Add(e.Net, e.Space));
        int first = ahead is not null ? 0 : FirstOfCorner(net, outer);
        Net = Turned(net, first);
        Space = Turned(space, first);
    }

    public List<EndPiece> Outer { get; }
    public List<EndPiece> Inner { get; }
    public IEnumerable<EndPiece> Ends => Outer.Concat(Inner);
    public ImmutableArray<Vec2> Net { get; }
    public ImmutableArray<Vec3> Space { get; }

    /// <summary>The forward corner piece has no forward edge: its outline starts at the corner with the least n in its inboard half.</summary>
    private static int FirstOfCorner(List<Vec2> net, List<EndPiece> outer)
    {
        double middle = (net.Min(p => p.X) + net.Max(p => p.X)) / 2;
        int best = 0,
            at = 0;
        for (int i = 0; i <= outer.Count; i++)
        {
            if (
                at < net.Count
                && net[at].X <= middle
                && (net[at].Y < net[best].Y || net[best].X > middle)
            )
            {
                best = at;
            }

            at += i < outer.Count ? outer[i].Net.Length - 1 : 0;
        }

        return best;
    }

    private static ImmutableArray<T> Turned<T>(List<T> points, int first) =>
        [.. points.Skip(first), .. points.Take(first)];
}
