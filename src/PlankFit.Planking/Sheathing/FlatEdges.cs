using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Sheathing;

/// <summary>The edges of the bottom on the cloth laid flat, one after the other with the outside to the right: the keel's side aft, the transom outboard, the chine forward, the stem inboard.</summary>
/// <param name="Edges">In that order; the stem's is not there where keel and chine meet in a point.</param>
public sealed record FlatEdges(ImmutableArray<FlatEdge> Edges)
{
    private const double EveryMm = 60;

    private const int Across = 24;

    public FlatEdge? Of(PanelEdge edge) => Edges.FirstOrDefault(e => e.Edge == edge);

    /// <summary>Null where the net does not reach an edge.</summary>
    internal static FlatEdges? On(ClothFace face, DrapedCloth draped)
    {
        int along = Math.Clamp((int)((face.Region.UTo - face.Region.UFrom) / EveryMm), 40, 400);
        ImmutableArray<FlatEdge>.Builder edges = ImmutableArray.CreateBuilder<FlatEdge>();
        PanelEdge[] order = [PanelEdge.Lower, PanelEdge.Transom, PanelEdge.Upper, PanelEdge.Stem];
        for (int lap = 0; lap < order.Length; lap++)
        {
            PanelEdge edge = order[lap];
            if (edge == PanelEdge.Stem && !face.Region.HasStem)
            {
                continue;
            }

            int n = edge is PanelEdge.Lower or PanelEdge.Upper ? along : Across;
            int from = lap;
            Uv[] places =
            [
                .. Enumerable
                    .Range(0, n + 1)
                    .Select(i => face.Region.OnLap(from + ((double)i / n), edge)),
            ];
            if (draped.Flat(places) is not { } flat)
            {
                return null;
            }

            Vec3[] space = [.. places.Select(face.Region.PointAt)];
            if (edge == PanelEdge.Stem && space[0].ChordTo(space[^1]) < 1)
            {
                continue;
            }

            edges.Add(new(edge, [.. flat], [.. space]));
        }

        return new(edges.ToImmutable());
    }
}

/// <summary>One edge: its places on the cloth laid flat, and on the hull.</summary>
public sealed record FlatEdge(
    PanelEdge Edge,
    ImmutableArray<Vec2> Flat,
    ImmutableArray<Vec3> OnHull
);
