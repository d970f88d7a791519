using NetTopologySuite.Algorithm.Locate;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;
using NetTopologySuite.Operation.Valid;

namespace PlankFit.Geometry.Primitives;

/// <summary>Questions about flat outlines that a general library answers, apart from the code that made them.</summary>
public static class PlanarShapes
{
    private static readonly GeometryFactory Factory = new();

    /// <summary>Points on a grid of a millionth of a millimetre: without one the overlay loses shapes whose sides all but coincide with their neighbours'.</summary>
    private static readonly PrecisionModel Grid = new(1e6);

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

    /// <summary>An outline as overlays have it: counter-clockwise, its points on their grid, none twice in succession.</summary>
    public static Vec2[] OnGrid(IEnumerable<Vec2> outline)
    {
        List<Vec2> kept = [];
        foreach (Vec2 p in outline)
        {
            Vec2 on = new(Grid.MakePrecise(p.X), Grid.MakePrecise(p.Y));
            if (kept.Count == 0 || on != kept[^1])
            {
                kept.Add(on);
            }
        }

        while (kept.Count > 1 && kept[0] == kept[^1])
        {
            kept.RemoveAt(kept.Count - 1);
        }

        if (FlatPolygon.Area(kept) < 0)
        {
            kept.Reverse(1, kept.Count - 1);
        }

        return [.. kept];
    }

    /// <summary>All of some shapes together less all of others: the outer outline of the largest piece of it, counter-clockwise (first point not repeated).</summary>
    /// <param name="shapes">By their corners; one without area is left out.</param>
    public static IReadOnlyList<Vec2> Together(
        IEnumerable<IReadOnlyList<Vec2>> shapes,
        IEnumerable<IReadOnlyList<Vec2>> less
    )
    {
        IReadOnlyList<Vec2>[] all = [.. shapes],
            off = [.. less];
        if (
            off.Length == 0
            && all.Length == 2
            && (Inner(all[0], all[1]) ?? Inner(all[1], all[0])) is { } both
        )
        {
            return both.Outer;
        }

        NetTopologySuite.Geometries.Geometry whole = Union(all),
            taken = Union(off);
        NetTopologySuite.Geometries.Geometry rest = taken.IsEmpty
            ? whole
            : OverlayNG.Overlay(whole, taken, SpatialFunction.Difference, Grid);
        return Polygons(rest).MaxBy(p => p.Area) is { } largest ? Outline(largest) : [];
    }

    /// <summary>What two shapes have in common: the outer outline of each piece of it that is larger than so much, counter-clockwise (first point not repeated).</summary>
    public static IReadOnlyList<IReadOnlyList<Vec2>> Common(
        IReadOnlyList<Vec2> one,
        IReadOnlyList<Vec2> other,
        double leastMm2
    ) =>
        Inner(one, other) is { } within
            ? FlatPolygon.Area(within.Inner) > leastMm2
                ? [within.Inner]
                : []
            :
            [
                .. Polygons(
                        OverlayNG.Overlay(
                            Ring(one),
                            Ring(other),
                            SpatialFunction.Intersection,
                            Grid
                        )
                    )
                    .Where(p => p.Area > leastMm2)
                    .Select(Outline),
            ];

    /// <summary>Both as an overlay gives them, where the one plainly lies in the other; null where that is not plain.</summary>
    private static (Vec2[] Inner, Vec2[] Outer)? Inner(
        IReadOnlyList<Vec2> one,
        IReadOnlyList<Vec2> other
    )
    {
        Vec2[] inner = OnGrid(one),
            outer = OnGrid(other);
        return
            PlainOutline.Of(inner) is { } plain
            && PlainOutline.Of(outer) is { } about
            && plain.LiesWithin(about)
            ? (inner, outer)
            : null;
    }

    private static IEnumerable<Polygon> Polygons(NetTopologySuite.Geometries.Geometry shapes) =>
        Enumerable.Range(0, shapes.NumGeometries).Select(shapes.GetGeometryN).OfType<Polygon>();

    private static IReadOnlyList<Vec2> Outline(Polygon shape)
    {
        Vec2[] outline =
        [
            .. shape.ExteriorRing.Coordinates.SkipLast(1).Select(c => new Vec2(c.X, c.Y)),
        ];
        if (FlatPolygon.Area(outline) < 0)
        {
            Array.Reverse(outline);
        }

        return outline;
    }

    private static NetTopologySuite.Geometries.Geometry Union(
        IEnumerable<IReadOnlyList<Vec2>> shapes
    )
    {
        NetTopologySuite.Geometries.Geometry[] all =
        [
            .. shapes
                .Select(Ring)
                .Select(r => r.IsValid ? r : r.Buffer(0))
                .Where(g => g.Area > 1e-6),
        ];
        return all.Length == 0
            ? Factory.CreatePolygon()
            : UnaryUnionNG.Union(Factory.BuildGeometry(all), Grid);
    }

    private static Polygon Ring(IReadOnlyList<Vec2> outline) =>
        Factory.CreatePolygon([
            .. outline.Append(outline[0]).Select(p => new Coordinate(p.X, p.Y)),
        ]);
}
