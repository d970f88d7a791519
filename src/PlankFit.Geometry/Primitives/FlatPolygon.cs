namespace PlankFit.Geometry.Primitives;

/// <summary>Flat outlines by their corners, the last joined to the first.</summary>
public static class FlatPolygon
{
    /// <summary>By the shoelace formula, mm²; positive for a counter-clockwise outline.</summary>
    public static double Area(IReadOnlyList<Vec2> outline)
    {
        double twice = 0;
        for (int i = 0; i < outline.Count; i++)
        {
            // From a corner and not from the origin, which may be far off.
            twice += (outline[i] - outline[0]).Cross(outline[(i + 1) % outline.Count] - outline[0]);
        }

        return twice / 2;
    }

    /// <summary>Whether a point is inside a polygon (first point not repeated): counting crossings of a ray (the usual even-odd rule).</summary>
    public static bool Holds(IReadOnlyList<Vec2> polygon, Vec2 p)
    {
        bool inside = false;
        for (int i = 0, j = polygon.Count - 1; i < polygon.Count; j = i++)
        {
            Vec2 a = polygon[i],
                b = polygon[j];
            if (a.Y > p.Y != b.Y > p.Y && p.X < ((b.X - a.X) * (p.Y - a.Y) / (b.Y - a.Y)) + a.X)
            {
                inside = !inside;
            }
        }

        return inside;
    }
}
