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
}
