namespace PlankFit.Draughting;

/// <summary>What would make a drawing a lie or unreadable, found before any backend writes a byte of it.</summary>
public static class DrawingFaults
{
    /// <exception cref="ArgumentException">A size, a point, a width or a height is not a number, or a pen is impossible; the message names the drawing and the shape.</exception>
    public static void Refuse(Drawing drawing)
    {
        if (!(IsLength(drawing.WidthMm) && IsLength(drawing.HeightMm)))
        {
            throw new ArgumentException(
                $"Drawing \"{drawing.Title}\": a sheet of {drawing.WidthMm} by {drawing.HeightMm} mm cannot be drawn."
            );
        }

        for (int i = 0; i < drawing.Shapes.Length; i++)
        {
            if (FaultOf(drawing.Shapes[i]) is { } fault)
            {
                Shape shape = drawing.Shapes[i];
                throw new ArgumentException(
                    $"Drawing \"{drawing.Title}\": shape {i + 1}, on layer {shape.Layer}: {fault}."
                );
            }
        }
    }

    private static string? FaultOf(Shape shape)
    {
        if (FaultOf(shape.Pen) is { } fault)
        {
            return fault;
        }

        return shape switch
        {
            Polyline line => FaultOf(line),
            CircleShape circle when !circle.Centre.IsFinite =>
                "the circle's centre is not a number",
            CircleShape circle when !IsLength(circle.RadiusMm) =>
                $"a circle of radius {circle.RadiusMm} mm",
            CircleShape circle => FaultOfGrey(circle.Fill),
            Lettering text when !(text.At.IsFinite && double.IsFinite(text.TurnDegrees)) =>
                $"the place of the text \"{text.Text}\" is not a number",
            Lettering text when !IsLength(text.HeightMm) =>
                $"the text \"{text.Text}\" has a height of {text.HeightMm} mm",
            _ => null,
        };
    }

    private static string? FaultOf(Polyline line)
    {
        if (line.Points.IsDefaultOrEmpty)
        {
            return "a polyline without points";
        }

        for (int i = 0; i < line.Points.Length; i++)
        {
            if (!line.Points[i].IsFinite)
            {
                return $"point {i + 1} of {line.Points.Length} is not a number ({line.Points[i]})";
            }
        }

        return FaultOfGrey(line.Fill);
    }

    private static string? FaultOf(Pen pen)
    {
        if (!(pen.WidthMm >= 0 && double.IsFinite(pen.WidthMm)))
        {
            return $"a line {pen.WidthMm} mm wide";
        }

        if (pen.IsDashed && !(pen.DashesMm.All(d => d >= 0) && IsLength(pen.DashesMm.Sum())))
        {
            return $"dashes of {string.Join(", ", pen.DashesMm)} mm";
        }

        return FaultOfGrey(pen.Grey);
    }

    private static string? FaultOfGrey(double? grey) =>
        grey is null or (>= 0 and <= 1) ? null : $"a grey of {grey}, not between 0 and 1";

    private static bool IsLength(double value) => value > 0 && double.IsFinite(value);
}
