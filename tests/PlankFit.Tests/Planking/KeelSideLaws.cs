using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking;

/// <summary>How far planks' ends lie from a keel side that has a closed form: in space, laid flat, and on both faces.</summary>
internal static class KeelSideLaws
{
    /// <summary>How far a place, so far from the table's surface, lies from the side, mm.</summary>
    public delegate double Side(Vec3 place, double offsetMm);

    /// <summary>The worst place of all planks of a layer.</summary>
    public static (double OffMm, string Where) Worst(
        BottomPlan plan,
        PlankLayerPlan layer,
        Side side
    ) =>
        layer
            .Starboard.SelectMany(plank =>
                plank
                    .Ends.Where(e => e.At == PanelEdge.Lower)
                    .SelectMany(end => OfEnd(plan, layer, plank, end, side))
            )
            .DefaultIfEmpty((double.PositiveInfinity, "no end meets the keel"))
            .MaxBy(m => double.IsNaN(m.Item1) ? double.PositiveInfinity : m.Item1);

    private static IEnumerable<(double OffMm, string Where)> OfEnd(
        BottomPlan plan,
        PlankLayerPlan layer,
        Plank plank,
        PlankEnd end,
        Side side
    )
    {
        double half = layer.Planks.ThicknessMm / 2;
        foreach (Vec3 p in end.Outline)
        {
            yield return (side(p, layer.NeutralOffsetMm), $"{plank.Id} in space at x = {p.X:0.0}");
        }

        foreach (
            (string name, double z, ImmutableArray<Vec2> line) in new[]
            {
                ("middle", 0, end.NetLine),
                ("outer face", half, end.OuterLine),
                ("inner face", -half, end.InnerLine),
            }
        )
        {
            ISurface face = new ParallelSurface(plan.Hull.Surface, layer.NeutralOffsetMm + z);
            for (int i = 0; i < line.Length; i++)
            {
                foreach (
                    Vec2 flat in i + 1 < line.Length
                        ? new[] { line[i], 0.5 * (line[i] + line[i + 1]) }
                        : [line[i]]
                )
                {
                    Uv uv = plank.Map.On(flat);
                    Vec3 p = face.At(uv.U, uv.V).P;
                    yield return (
                        side(p, layer.NeutralOffsetMm + z),
                        $"{plank.Id} {name} at x = {p.X:0.0}"
                    );
                }
            }
        }
    }
}
