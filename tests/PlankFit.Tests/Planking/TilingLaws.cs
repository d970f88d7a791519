using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;

namespace PlankFit.Tests.Planking;

/// <summary>The ends of all planks go once round the layer: where one stretch of boundary stops exactly one other starts.</summary>
internal static class TilingLaws
{
    private const double SamePlaceMm = 1e-3;

    public static void Check(PlankLayerPlan layer, List<string> broken)
    {
        Edges(layer, broken);
        (PlankId Id, PanelEdge At, Vec3 P)[] stops =
        [
            .. layer
                .Starboard.SelectMany(p => p.Ends.Select(e => (p.Id, End: e)))
                .Where(x => x.End.Outline[0].ChordTo(x.End.Outline[^1]) > SamePlaceMm)
                .SelectMany(x =>
                    new[]
                    {
                        (x.Id, x.End.At, x.End.Outline[0]),
                        (x.Id, x.End.At, x.End.Outline[^1]),
                    }
                ),
        ];
        foreach ((PlankId id, PanelEdge at, Vec3 p) in stops)
        {
            int met = stops.Count(s => s.P.ChordTo(p) <= SamePlaceMm);
            if (met != 2)
            {
                broken.Add($"{id}: {met} ends of planks meet at {p} on the {at}, not two");
            }
        }
    }

    /// <summary>The ends of all planks tile the edges of the region: no stretch of boundary twice or not at all.</summary>
    private static void Edges(PlankLayerPlan layer, List<string> broken)
    {
        double ends = layer.Starboard.SelectMany(p => p.Ends).Sum(e => Length(e.Outline)),
            around = Length(layer.Outline) + layer.Outline[^1].ChordTo(layer.Outline[0]);
        if (!(Math.Abs(ends - around) <= 2e-4 * around))
        {
            broken.Add(
                $"layer {layer.Number}: ends of planks are {ends} mm long, the boundary {around}"
            );
        }
    }

    private static double Length(ImmutableArray<Vec3> p) =>
        Enumerable.Range(0, p.Length - 1).Sum(i => p[i].ChordTo(p[i + 1]));
}
