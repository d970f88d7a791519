using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Tiling;

/// <summary>Shapes moved from the drawing's place to the page's.</summary>
public static class Placed
{
    public static Shape By(Shape shape, Vec2 move) =>
        shape switch
        {
            Polyline line => line with { Points = [.. line.Points.Select(p => p + move)] },
            CircleShape circle => circle with { Centre = circle.Centre + move },
            Lettering text => text with { At = text.At + move },
            _ => throw new NotSupportedException($"No way to move a {shape.GetType().Name}."),
        };
}
