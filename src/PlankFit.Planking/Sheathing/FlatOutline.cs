using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Sheathing;

/// <summary>The bottom's flat edges moved outward, each by its own width, and joined at the corners.</summary>
public static class FlatOutline
{
    /// <summary>A corner is carried out no further than this many times the greater of its two widths; sharper ones are cut off square.</summary>
    private const double MostMitre = 3;

    /// <summary>Where cloth stops short of an edge, it does so past the edge's ends as well, mm: as far as anything goes past the edges beside it.</summary>
    private const double PastEndsMm = 2000;

    /// <summary>The edges' places moved outward, corners left out.</summary>
    /// <param name="widthMm">By how much a place is moved outward, less than nought inward: its edge, and where it is on the hull.</param>
    public static IEnumerable<Vec2> Points(
        FlatEdges edges,
        Func<PanelEdge, Vec3, double> widthMm
    ) => edges.Edges.SelectMany(e => Moved(e, at => widthMm(e.Edge, at)));

    /// <param name="excessMm">So much of every width is to pull on and to trim off again: an edge's end has it too, where the other edge does not go past that.</param>
    /// <returns>A closed outline, counter-clockwise, the first point not again at its end.</returns>
    public static ImmutableArray<Vec2> Of(
        FlatEdges edges,
        Func<PanelEdge, Vec3, double> widthMm,
        double excessMm = 0
    )
    {
        MovedEdge[] moved =
        [
            .. edges.Edges.Select(e => new MovedEdge(
                e,
                Moved(e, at => widthMm(e.Edge, at)),
                [.. e.OnHull.Select(at => widthMm(e.Edge, at))]
            )),
        ];
        if (PlainChain(moved, excessMm) is { } plain)
        {
            return [.. plain];
        }

        List<IReadOnlyList<Vec2>> more =

            [
                [.. edges.Edges.SelectMany(e => e.Flat)],
            ],
            less = [];
        for (int i = 0; i < moved.Length; i++)
        {
            Strips(moved[i], more, less);
            if (Corner(moved[i], moved[(i + 1) % moved.Length], excessMm) is { } corner)
            {
                more.Add(corner.Shape);
            }
        }

        return [.. PlanarShapes.Together(more, less)];
    }

    /// <summary>An edge, its places moved outward, and by how much each.</summary>
    private sealed record MovedEdge(FlatEdge Edge, Vec2[] To, double[] WidthsMm);

    /// <summary>
    /// The moved edges one after the other with the corners between them. That is the outline of all strips and corners together where none of these is turned inside
    /// out and the chain nowhere comes near itself; null where that is not plain, or an edge is moved inward.
    /// </summary>
    private static Vec2[]? PlainChain(MovedEdge[] edges, double excessMm)
    {
        List<Vec2> chain = [];
        for (int i = 0; i < edges.Length; i++)
        {
            MovedEdge edge = edges[i];
            ImmutableArray<Vec2> flat = edge.Edge.Flat;
            for (int k = 0; k < flat.Length; k++)
            {
                if (
                    edge.WidthsMm[k] < 0
                    || (k > 0 && !Turns(flat[k - 1], edge.To[k - 1], edge.To[k], flat[k]))
                )
                {
                    return null;
                }
            }

            chain.AddRange(edge.To);
            if (Corner(edge, edges[(i + 1) % edges.Length], excessMm) is { } corner)
            {
                if (PlainOutline.Of(corner.Shape) is null || FlatPolygon.Area(corner.Shape) < 0)
                {
                    return null;
                }

                chain.AddRange(corner.Between);
            }
        }

        Vec2[] inner = PlanarShapes.OnGrid(edges.SelectMany(e => e.Edge.Flat)),
            outline = PlanarShapes.OnGrid(chain);
        return PlainOutline.Of(inner) is not null && PlainOutline.Of(outline) is not null
            ? outline
            : null;
    }

    /// <summary>Whether a quad, or a triangle whose last two corners are one, is nowhere turned inside out.</summary>
    private static bool Turns(Vec2 a, Vec2 b, Vec2 c, Vec2 d) =>
        (b - a).Cross(c - a) >= 0 && (c - a).Cross(d - a) >= 0;

    private static Vec2[] Moved(FlatEdge edge, Func<Vec3, double> widthMm)
    {
        int n = edge.Flat.Length;
        var moved = new Vec2[n];
        for (int i = 0; i < n; i++)
        {
            moved[i] = edge.Flat[i] - (widthMm(edge.OnHull[i]) * Along(edge, i).Left());
        }

        return moved;
    }

    private static Vec2 Along(FlatEdge edge, int i) =>
        (edge.Flat[Math.Min(i + 1, edge.Flat.Length - 1)] - edge.Flat[Math.Max(i - 1, 0)]).Unit();

    /// <summary>What lies between an edge and where it is moved to, stretch by stretch.</summary>
    private static void Strips(
        MovedEdge on,
        List<IReadOnlyList<Vec2>> more,
        List<IReadOnlyList<Vec2>> less
    )
    {
        (FlatEdge edge, Vec2[] moved, double[] widths) = on;
        int last = moved.Length - 1;
        for (int i = 0; i < last; i++)
        {
            Vec2[] strip = [edge.Flat[i], moved[i], moved[i + 1], edge.Flat[i + 1]];
            bool inward = widths[i] < 0 || widths[i + 1] < 0;
            (inward ? less : more).Add(strip);
        }

        foreach (int end in new[] { 0, last })
        {
            if (widths[end] < 0)
            {
                // Straight on past the end, as wide inward and all that lies outward.
                Vec2 along = (end == 0 ? -PastEndsMm : PastEndsMm) * Along(edge, end),
                    outward = -PastEndsMm * Along(edge, end).Left();
                less.Add([
                    moved[end],
                    moved[end] + along,
                    moved[end] + along + outward,
                    moved[end] + outward,
                ]);
            }
        }
    }

    /// <summary>The corner between two edges that are both moved outward: to where their lines meet, where that is not far. Null where they are not both moved outward.</summary>
    /// <returns>The corner's shape, and what of it lies between both moved edges on the outline.</returns>
    private static (Vec2[] Shape, Vec2[] Between)? Corner(
        MovedEdge one,
        MovedEdge other,
        double excessMm
    )
    {
        double widthMm = Math.Max(one.WidthsMm[^1], other.WidthsMm[0]);
        if (!(one.WidthsMm[^1] > 0 && other.WidthsMm[0] > 0))
        {
            return null;
        }

        Vec2 corner = one.Edge.Flat[^1],
            a = one.To[^1],
            along = (one.To[^1] - one.To[^2]).Unit(),
            b = other.To[0],
            back = (other.To[0] - other.To[1]).Unit();
        double det = along.Cross(back);
        if (Math.Abs(det) > 1e-9)
        {
            double run = (b - a).Cross(back) / det;
            Vec2 met = a + (run * along);
            if (run > 0 && met.ChordTo(corner) <= MostMitre * widthMm)
            {
                if (Turns(corner, a, met, b))
                {
                    return ([corner, a, met, b], [met]);
                }

                // Short of the end of one of them: the other comes upon that end, carried on by the excess.
                if (AtEnd(corner, (a, met), (b, excessMm * back)) is { } second)
                {
                    return (
                        excessMm > 0 ? [corner, a, .. second, b] : [corner, a, .. second],
                        second
                    );
                }

                if (AtEnd(corner, (b, met), (a, excessMm * along)) is { } first)
                {
                    Array.Reverse(first);
                    return (excessMm > 0 ? [corner, a, .. first, b] : [corner, .. first, b], first);
                }

                return ([corner, a, met, b], [met]);
            }
        }

        return ([corner, a, b], []);
    }

    /// <summary>What lies on the outline between an edge that comes upon another's end and that end; null where it does not come upon it.</summary>
    /// <param name="comes">Where the edge ends, and where the lines of both meet.</param>
    /// <param name="end">Where the other ends, and by how much it is carried on there.</param>
    private static Vec2[]? AtEnd(Vec2 corner, (Vec2 From, Vec2 To) comes, (Vec2 At, Vec2 On) end) =>
        Crossing(comes.From, comes.To, corner, end.At) is not { } upon ? null
        : end.On.Norm == 0 ? [upon]
        : Crossing(comes.From, comes.To, corner + end.On, end.At + end.On) is { } further
            ? [further, end.At + end.On]
        : [end.At + end.On];

    /// <summary>Where two stretches cross; null where they do not.</summary>
    private static Vec2? Crossing(Vec2 a, Vec2 b, Vec2 c, Vec2 d)
    {
        double det = (b - a).Cross(d - c),
            one = (c - a).Cross(d - c) / det,
            other = (c - a).Cross(b - a) / det;
        return one is > 0 and < 1 && other is > 0 and < 1 ? a + (one * (b - a)) : null;
    }
}
