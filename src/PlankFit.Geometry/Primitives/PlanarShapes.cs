using NetTopologySuite.Algorithm.Locate;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Valid;

namespace PlankFit.Geometry.Primitives;

/// <summary>Questions about flat outlines that a general library answers, apart from the code that made them.</summary>
public static class PlanarShapes
{
    private static readonly GeometryFactory Factory = new();

    /// <summary>Whether a closed outline (first point not repeated) neither crosses nor touches itself.</summary>
    public static bool IsSimple(IReadOnlyList<Vec2> outline) =>
        outline.Count > 2 && new IsValidOp(Ring(outline)).IsValid;

    /// <summary>The point that lies furthest outside a simple outline, and how far, mm; (null, 0) where all lie in it or on it.</summary>
    public static (Vec2? Point, double Mm) FurthestOutside(
        IReadOnlyList<Vec2> outline,
        IEnumerable<Vec2> points
    )
    {
        Polygon ring = Ring(outline);
        var locator = new IndexedPointInAreaLocator(ring);
        (Vec2?, double) worst = (null, 0);
        foreach (Vec2 p in points)
        {
            var at = new Coordinate(p.X, p.Y);
            if (locator.Locate(at) == Location.Exterior)
            {
                double out_ = ring.ExteriorRing.Distance(Factory.CreatePoint(at));
                worst = out_ > worst.Item2 ? (p, out_) : worst;
            }
        }

        return worst;
    }

    private static Polygon Ring(IReadOnlyList<Vec2> outline) =>
        Factory.CreatePolygon([
            .. outline.Append(outline[0]).Select(p => new Coordinate(p.X, p.Y)),
        ]);
}
