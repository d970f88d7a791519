using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Sheathing;

/// <summary>The bottom's flat edges moved outward, each by its own width, and joined at the corners.</summary>
internal static class FlatOutline
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

    /// <returns>A closed outline, counter-clockwise, the first point not again at its end.</returns>
    public static ImmutableArray<Vec2> Of(FlatEdges edges, Func<PanelEdge, Vec3, double> widthMm)
    {
        List<IReadOnlyList<Vec2>> more =

            [
                [.. edges.Edges.SelectMany(e => e.Flat)],
            ],
            less = [];
        Vec2[][] moved = [.. edges.Edges.Select(e => Moved(e, at => widthMm(e.Edge, at)))];
        for (int i = 0; i < moved.Length; i++)
        {
            FlatEdge edge = edges.Edges[i];
            double[] widths = [.. edge.OnHull.Select(at => widthMm(edge.Edge, at))];
            Strips(edge, moved[i], widths, more, less);
            int next = (i + 1) % moved.Length;
            double nextWidth = widthMm(edges.Edges[next].Edge, edges.Edges[next].OnHull[0]);
            if (widths[^1] > 0 && nextWidth > 0)
            {
                more.Add(
                    Corner(edge.Flat[^1], moved[i], moved[next], Math.Max(widths[^1], nextWidth))
                );
            }
        }

        return [.. PlanarShapes.Together(more, less)];
    }

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
        FlatEdge edge,
        Vec2[] moved,
        double[] widths,
        List<IReadOnlyList<Vec2>> more,
        List<IReadOnlyList<Vec2>> less
    )
    {
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

    /// <summary>The corner between two edges that are both moved outward: to where their lines meet, where that is not far.</summary>
    private static Vec2[] Corner(Vec2 corner, Vec2[] before, Vec2[] after, double widthMm)
    {
        Vec2 a = before[^1],
            along = (before[^1] - before[^2]).Unit(),
            b = after[0],
            back = (after[0] - after[1]).Unit();
        double det = along.Cross(back);
        if (Math.Abs(det) > 1e-9)
        {
            double run = (b - a).Cross(back) / det;
            Vec2 met = a + (run * along);
            if (run > 0 && met.ChordTo(corner) <= MostMitre * widthMm)
            {
                return [corner, a, met, b];
            }
        }

        return [corner, a, b];
    }
}
