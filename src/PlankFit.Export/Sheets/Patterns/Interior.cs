using PlankFit.Geometry;

namespace PlankFit.Export.Sheets;

/// <summary>Where lettering has most room inside a shape.</summary>
internal static class Interior
{
    private const int Across = 25;

    /// <summary>The point of a coarse grid that lies deepest inside the polygon, and how far it is from the nearest side, mm.</summary>
    public static Vec2 DeepestPoint(IReadOnlyList<Vec2> polygon, out double room)
    {
        IReadOnlyList<Vec2> rough = Thinning.Closed(polygon, 0.5);
        Box box = Box.Around(rough);
        Vec2 best = box.Middle;
        room = 0;
        for (int i = 1; i < Across; i++)
        {
            for (int j = 1; j < 8; j++)
            {
                var p = new Vec2(
                    box.Left + (box.Width * i / Across),
                    box.Bottom + (box.Height * j / 8)
                );
                if (!Segments.Inside(rough, p))
                {
                    continue;
                }

                // Among equally deep places the one nearest the middle.
                double depth = Depth(rough, p) - (1e-3 * p.ChordTo(box.Middle));
                if (depth > room)
                {
                    (best, room) = (p, depth);
                }
            }
        }

        return best;
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
