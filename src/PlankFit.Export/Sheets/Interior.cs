using PlankFit.Geometry.Primitives;

namespace PlankFit.Export.Sheets;

/// <summary>Where lettering has most room inside a shape.</summary>
internal static class Interior
{
    private const int Across = 24;
    private const int Up = 12;

    /// <summary>The point of a coarse grid that lies deepest inside the polygon, and how far it is from the nearest side, mm.</summary>
    public static Vec2 DeepestPoint(IReadOnlyList<Vec2> polygon, out double room)
    {
        IReadOnlyList<Vec2> rough = Thinning.Closed(polygon, ThinMm(polygon));
        var box = Box.Around(rough);
        var inside = new List<(Vec2 At, double Depth)>();
        for (int i = 1; i < Across; i++)
        {
            for (int j = 1; j < Up; j++)
            {
                var p = new Vec2(
                    box.Left + (box.Width * i / Across),
                    box.Bottom + (box.Height * j / Up)
                );
                if (FlatPolygon.Holds(rough, p))
                {
                    inside.Add((p, Depth(rough, p)));
                }
            }
        }

        if (inside.Count == 0)
        {
            room = 0;
            return box.Middle;
        }

        // Among places nearly as deep as the deepest, the one nearest the middle: numbers of like planks then stand in a row.
        double deepest = inside.Max(p => p.Depth);
        (Vec2 best, room) = inside
            .Where(p => p.Depth >= 0.88 * deepest)
            .MinBy(p => p.At.ChordTo(box.Middle));
        return best;
    }

    /// <summary>Three thousandths of the shape's size: enough to letter it.</summary>
    private static double ThinMm(IReadOnlyList<Vec2> polygon)
    {
        var box = Box.Around(polygon);
        return 3e-3 * Math.Max(box.Width, box.Height);
    }

    private static double Depth(IReadOnlyList<Vec2> polygon, Vec2 p)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i < polygon.Count; i++)
        {
            Vec2 a = polygon[i],
                side = polygon[(i + 1) % polygon.Count] - a;
            double along = side.Norm > 0 ? Math.Clamp((p - a).Dot(side) / side.Dot(side), 0, 1) : 0;
            least = Math.Min(least, p.ChordTo(a + (along * side)));
        }

        return least;
    }
}
