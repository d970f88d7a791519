using System.Collections.Immutable;
using MathNet.Numerics.Integration;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Views;

/// <summary>
/// A layer's starboard side expanded: x of the keel's edge abreast, and the girth from the layer's lower edge, along the section and on the
/// layer's own middle surface, laid out straight. Lengths across the hull are true, those along it are as in plan.
/// </summary>
public sealed class ExpandedLayer
{
    /// <summary>Vertices kept on a plank besides its corners: enough that no chord shows on A3.</summary>
    private const int PointsAPlank = 40;

    /// <summary>What a vertex may lie off the chord of its neighbours and still be left out, mm.</summary>
    private const double ThinMm = 0.2;

    /// <summary>An end so near a station, in u, ends on it.</summary>
    private const double OnStation = 1e-3;

    private readonly LayerEdges edges;

    private ExpandedLayer(LayerEdges edges, PlankLayerPlan layer)
    {
        this.edges = edges;
        Panel = layer.Panel;
        Planks = [.. layer.Starboard.Select(p => (p, Outline(p.OnHull)))];
        Stations =
        [
            .. edges.Stations.Select(s => new ExpandedStation(
                s.Name,
                s.U,
                At(new(s.U, edges.Lower.V(s.U))),
                At(new(s.U, edges.Upper.V(s.U)))
            )),
        ];
        LowerEdge = [.. edges.Lower.Us.Select(u => At(new(u, edges.Lower.V(u))))];
        UpperEdge = [.. edges.Upper.Us.Select(u => At(new(u, edges.Upper.V(u))))];
    }

    public static ExpandedLayer Of(BottomPlan plan, PlankLayerPlan layer) =>
        Of(LayerEdges.Of(plan, layer), layer);

    internal static ExpandedLayer Of(LayerEdges edges, PlankLayerPlan layer) => new(edges, layer);

    public Panel Panel { get; }

    /// <summary>Every plank and its net outline expanded (x aft, girth outboard, mm), the first vertex not repeated.</summary>
    public ImmutableArray<(Plank Plank, ImmutableArray<Vec2> Outline)> Planks { get; }

    /// <summary>The stations that this layer reaches, from forward.</summary>
    public ImmutableArray<ExpandedStation> Stations { get; }

    public ImmutableArray<Vec2> LowerEdge { get; }

    public ImmutableArray<Vec2> UpperEdge { get; }

    /// <summary>The girth at which a seam crosses a station or ends on it, mm; null where it does neither. To the chords of the seam's own points.</summary>
    public double? GirthWhere(PlankEdge seam, ExpandedStation station)
    {
        ImmutableArray<Vec3> points = seam.Seam;
        if (points.Length < 2)
        {
            return null;
        }

        int low = 0,
            high = points.Length - 1;
        Uv first = edges.Finder.Of(points[low]),
            last = edges.Finder.Of(points[high]);
        if (first.U < station.U == last.U < station.U)
        {
            return EndOn(station, first, last);
        }

        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            Uv at = edges.Finder.Of(points[middle]);
            if (at.U < station.U == first.U < station.U)
            {
                (low, first) = (middle, at);
            }
            else
            {
                (high, last) = (middle, at);
            }
        }

        return At(first + ((station.U - first.U) / (last.U - first.U) * (last - first))).Y;
    }

    /// <summary>Where a seam ends on the station, as on a stem that stands there: rounding puts the end on either side of it.</summary>
    private double? EndOn(ExpandedStation station, Uv first, Uv last)
    {
        bool firstIs = Math.Abs(first.U - station.U) < OnStation,
            lastIs = Math.Abs(last.U - station.U) < OnStation;
        // A seam that runs along the station crosses it nowhere.
        return firstIs == lastIs ? null : At(new(station.U, (firstIs ? first : last).V)).Y;
    }

    /// <summary>A point of the layer's middle surface, starboard, expanded.</summary>
    public Vec2 Of(Vec3 p) => At(edges.Finder.Of(p));

    private Vec2 At(Uv p)
    {
        double from = edges.Lower.V(p.U),
            girth = GaussLegendreRule.Integrate(
                t => edges.Surface.At(p.U, t).Dv.Norm,
                from,
                p.V,
                8
            );
        return new(edges.Surface.At(p.U, from).P.X, girth);
    }

    private ImmutableArray<Vec2> Outline(Plank plank)
    {
        var corners = Thinning.Closed(plank.FlatNet, ThinMm).ToHashSet();
        int step = Math.Max(1, plank.Outline.Length / PointsAPlank);
        return
        [
            .. Enumerable
                .Range(0, plank.Outline.Length)
                .Where(i => i % step == 0 || corners.Contains(plank.FlatNet[i]))
                .Select(i => At(edges.Finder.Of(plank.Outline[i]))),
        ];
    }
}

/// <summary>A station in the expansion: its line runs from the lower edge to the upper.</summary>
public sealed record ExpandedStation(string Name, double U, Vec2 Lower, Vec2 Upper)
{
    public double GirthMm => Upper.Y;
}
