using System.Collections.Immutable;
using PlankFit.Geometry.Development;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Panels;

/// <summary>A whole panel, the starboard bottom or another, on the table's surface, and what is drawn on it.</summary>
public static class BottomPanel
{
    /// <summary>How near the foot of a seam's point must come to square, mm.</summary>
    private const double FootMm = 1e-4;

    public static SurfacePatch Patch(HullSurface hull) =>
        new(hull.Surface, hull.Surface.UFrom, hull.Surface.UTo, _ => 0, hull.Surface.UpperV);

    /// <summary>Laid flat, with stations and the seams of every plank layer.</summary>
    public static PanelPlan Develop(Planked planked, PanelOptions options) =>
        new(
            PanelFlattening.Flatten(Patch(planked.Hull), options),
            planked.Hull.Stations,
            [
                .. planked.PlankLayers.Select(l => new PanelSeams(
                    l.Number,
                    l.Spec.Name,
                    Seams(planked.Hull, l)
                )),
            ]
        )
        {
            Panel = planked.Job.Hull.Panel,
        };

    /// <summary>
    /// The seams of a layer on the starboard side, forward to aft, each inboard to outboard. Their points lie on the layer's own
    /// mid-thickness surface and are carried to the table's surface along its normal.
    /// </summary>
    public static ImmutableArray<PanelSeam> Seams(HullSurface hull, PlankLayerPlan layer) =>
        [
            .. layer
                .Starboard.Select(p => p.OnHull)
                .Where(p => p.AfterEdge.Exists && p.AfterEdge.Neighbour is not null)
                .Select(p => new PanelSeam(
                    p.Id,
                    p.AfterEdge.Neighbour!.Value,
                    Feet(hull, p.AfterEdge.Seam)
                )),
        ];

    private static ImmutableArray<Uv> Feet(HullSurface hull, ImmutableArray<Vec3> seam)
    {
        ImmutableArray<Uv>.Builder feet = ImmutableArray.CreateBuilder<Uv>(seam.Length);
        Uv? guess = null;
        foreach (Vec3 point in seam)
        {
            Uv from = guess ?? Nearest(hull.Surface, point);
            if (
                ClosestPoint.TryFind(
                    hull.Surface,
                    point,
                    from,
                    FootMm,
                    out ClosestPoint.Result found
                )
                || ClosestPoint.TryFind(
                    hull.Surface,
                    point,
                    Nearest(hull.Surface, point),
                    FootMm,
                    out found
                )
            )
            {
                feet.Add(found.Uv);
                guess = found.Uv;
            }
        }

        return feet.ToImmutable();
    }

    /// <summary>The nearest of a coarse grid of points.</summary>
    private static Uv Nearest(LoftedSurface surface, Vec3 point)
    {
        (double Mm, Uv At) best = (double.PositiveInfinity, default);
        for (int i = 0; i <= 40; i++)
        {
            double u = surface.UFrom + ((surface.UTo - surface.UFrom) * i / 40);
            for (int j = 0; j <= 6; j++)
            {
                double v = surface.UpperV(u) * j / 6,
                    mm = surface.At(u, v).P.ChordTo(point);
                best = mm < best.Mm ? (mm, new(u, v)) : best;
            }
        }

        return best.At;
    }
}

/// <summary>The developed panel and what is drawn on it: starboard; port is its mirror image.</summary>
public sealed record PanelPlan(
    FlatPanel Flat,
    ImmutableArray<StationOnHull> Stations,
    ImmutableArray<PanelSeams> Layers
)
{
    public required Panel Panel { get; init; }
}

/// <summary>The seams of one plank layer.</summary>
public sealed record PanelSeams(int Layer, string Name, ImmutableArray<PanelSeam> Seams);

/// <summary>A seam between two planks, as points of the panel's surface.</summary>
public sealed record PanelSeam(PlankId Forward, PlankId After, ImmutableArray<Uv> Line);
