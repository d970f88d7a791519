using PlankFit.Geometry.Primitives;

namespace PlankFit.Export.SettingUp;

/// <summary>A drawing of the starboard half turned into that of the port half: lines are mirrored in the middle line, letters stay readable.</summary>
internal static class PortHalf
{
    public static Shape Of(Shape shape) =>
        shape switch
        {
            Polyline line => line with { Points = [.. line.Points.Select(Mirrored)] },
            CircleShape circle => circle with { Centre = Mirrored(circle.Centre) },
            Lettering text => text with
            {
                At = Mirrored(text.At),
                TurnDegrees = -text.TurnDegrees,
                Anchor = text.Anchor switch
                {
                    Anchor.BaselineLeft => Anchor.BaselineRight,
                    Anchor.BaselineRight => Anchor.BaselineLeft,
                    Anchor.MiddleLeft => Anchor.MiddleRight,
                    Anchor.MiddleRight => Anchor.MiddleLeft,
                    var centred => centred,
                },
            },
            _ => throw new NotSupportedException($"No way to mirror a {shape.GetType().Name}."),
        };

    private static Vec2 Mirrored(Vec2 p) => new(-p.X, p.Y);
}
