using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Views;

/// <summary>A layer's edges at the two lines of its panel, starboard, as its planks' ends give them, and the stations between.</summary>
internal sealed class LayerEdges
{
    private const double FootMm = 1e-6;
    private const int PointsAnEnd = 8;

    private LayerEdges(PlankLayerPlan layer, ImmutableArray<StationOnHull> stations)
    {
        Surface = layer.Surface;
        Finder = new(layer.Surface, stations, FootMm);
        // Seams first: they lead the search from the keel, where it can begin, to the chine.
        foreach (
            PlankEdge seam in layer.Starboard.Select(p => p.OnHull.AfterEdge).Where(e => e.Exists)
        )
        {
            foreach (Vec3 point in Picked(seam.Seam, PointsAnEnd))
            {
                Finder.Of(point);
            }
        }

        Lower = Edge(layer, PanelEdge.Lower);
        Upper = Edge(layer, PanelEdge.Upper);
        Stations =
        [
            .. stations
                .Where(s => Lower.Holds(s.U) && Upper.Holds(s.U))
                .Select(s => new StationLine(
                    s.Name,
                    s.U,
                    Surface.At(s.U, Lower.V(s.U)).P,
                    Surface.At(s.U, Upper.V(s.U)).P
                )),
        ];
    }

    public static LayerEdges Of(BottomPlan plan, PlankLayerPlan layer) =>
        new(layer, plan.Hull.Stations);

    public ISurface Surface { get; }

    public UvFinder Finder { get; }

    public EdgeLine Lower { get; }

    public EdgeLine Upper { get; }

    /// <summary>The stations that this layer reaches, from forward.</summary>
    public ImmutableArray<StationLine> Stations { get; }

    /// <summary>Says which stations the layer does not reach, as where keel and chine meet in a point; empty where it reaches all.</summary>
    public string Beyond(BottomPlan plan)
    {
        string[] names =
        [
            .. plan
                .Hull.Stations.Where(s => Stations.All(t => t.Name != s.Name))
                .Select(s => s.Name),
        ];
        return names.Length == 0 ? ""
            : names.Length == 1 ? $" Station {names[0]} lies beyond this layer."
            : $" Stations {string.Join(", ", names)} lie beyond this layer.";
    }

    private EdgeLine Edge(PlankLayerPlan layer, PanelEdge edge) =>
        new(
            layer
                .Starboard.SelectMany(p => p.OnHull.Ends)
                .Where(e => e.At == edge)
                .SelectMany(e => Picked(e.Outline, PointsAnEnd))
                .Select(p => Finder.Of(p))
        );

    /// <summary>The first, the last, and evenly between.</summary>
    private static IEnumerable<Vec3> Picked(ImmutableArray<Vec3> points, int count) =>
        points.Length <= count
            ? points
            : Enumerable
                .Range(0, count)
                .Select(k => points[(int)Math.Round(k * (points.Length - 1) / (count - 1.0))]);
}

/// <summary>A station on a layer: where its section begins at the keel's side and where it ends at the chine, starboard.</summary>
internal sealed record StationLine(string Name, double U, Vec3 Lower, Vec3 Upper);
