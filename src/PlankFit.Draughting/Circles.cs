using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting;

/// <summary>Circles as polygons, where they must be dashed or cut.</summary>
public static class Circles
{
    /// <param name="sagMm">How far a chord may leave the circle.</param>
    /// <returns>Points on the circle, counter-clockwise from its right, the first not repeated.</returns>
    public static ImmutableArray<Vec2> Polygon(Vec2 centre, double radiusMm, double sagMm)
    {
        double half = Math.Acos(Math.Max(0, 1 - (sagMm / radiusMm)));
        int count = Math.Max(12, (int)Math.Ceiling(Math.PI / half));
        ImmutableArray<Vec2>.Builder points = ImmutableArray.CreateBuilder<Vec2>(count);
        for (int i = 0; i < count; i++)
        {
            (double sin, double cos) = Math.SinCos(2 * Math.PI * i / count);
            points.Add(centre + (radiusMm * new Vec2(cos, sin)));
        }

        return points.MoveToImmutable();
    }
}
