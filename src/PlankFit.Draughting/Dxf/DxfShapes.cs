using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Dxf;

/// <summary>A shape ready to be written: in the file's unit, rounded as it will be written, on a valid layer.</summary>
internal abstract record DxfShape(string Layer, bool Dashed);

internal sealed record DxfLine(string Layer, bool Dashed, ImmutableArray<Vec2> Points, bool Closed)
    : DxfShape(Layer, Dashed);

internal sealed record DxfCircle(string Layer, bool Dashed, Vec2 Centre, double Radius)
    : DxfShape(Layer, Dashed);

/// <param name="Left">The left end of the baseline, for readers that look at nothing else.</param>
/// <param name="Across">0 left, 1 centre, 2 right.</param>
/// <param name="Middle">Anchored on the middle of the capitals, not on the baseline.</param>
internal sealed record DxfLettering(
    string Layer,
    Vec2 Left,
    Vec2 Anchor,
    string Text,
    double Height,
    double TurnDegrees,
    int Across,
    bool Middle
) : DxfShape(Layer, false);

/// <summary>Everything of a drawing that goes into its file.</summary>
internal sealed record DxfShapes(
    ImmutableArray<DxfShape> Shapes,
    ImmutableArray<string> Layers,
    Vec2 Least,
    Vec2 Most
)
{
    public bool AnyDashed { get; } = Shapes.Any(s => s.Dashed);

    /// <exception cref="ArgumentException">Nothing is drawn, or a line has no length once rounded; the message names the drawing.</exception>
    public static DxfShapes Of(Drawing drawing, DxfOptions options)
    {
        DrawingFaults.Refuse(drawing);
        var shapes = drawing
            .Shapes.Where(s => s is not Lettering { Text.Length: 0 })
            .Select(s => Of(drawing, s, options))
            .ToImmutableArray();
        if (shapes.IsEmpty)
        {
            throw new ArgumentException(
                $"Drawing \"{drawing.Title}\": there is nothing to write to a DXF."
            );
        }

        var corners = shapes.SelectMany(Corners).ToList();
        return new(
            shapes,
            [.. shapes.Select(s => s.Layer).Distinct().Order(StringComparer.Ordinal)],
            new(corners.Min(p => p.X), corners.Min(p => p.Y)),
            new(corners.Max(p => p.X), corners.Max(p => p.Y))
        );
    }

    private static DxfShape Of(Drawing drawing, Shape shape, DxfOptions options)
    {
        string layer = DxfLayers.Name(shape.Layer);
        switch (shape)
        {
            case Polyline line:
                ImmutableArray<Vec2> points =
                [
                    .. DxfChords
                        .Of(WithoutRepeats(line, options), line.Closed)
                        .Select(p => Rounded(p, options)),
                ];
                return points.Length < 2
                    ? throw new ArgumentException(
                        $"Drawing \"{drawing.Title}\": a line on layer {shape.Layer} at {line.Points[0]} has no length."
                    )
                    : new DxfLine(
                        layer,
                        line.Pen.IsDashed,
                        points,
                        line.Closed && points.Length > 2
                    );
            case CircleShape circle:
                double radius = Rounded(circle.RadiusMm, options);
                return radius == 0
                    ? throw new ArgumentException(
                        $"Drawing \"{drawing.Title}\": a circle on layer {shape.Layer} at {circle.Centre} has no size."
                    )
                    : new DxfCircle(
                        layer,
                        circle.Pen.IsDashed,
                        Rounded(circle.Centre, options),
                        radius
                    );
            case Lettering text:
                return new DxfLettering(
                    layer,
                    Rounded(text.LeftEnd(), options),
                    Rounded(text.At, options),
                    DxfText.Ascii(text.Text),
                    text.HeightMm * options.Scale,
                    text.TurnDegrees,
                    (int)text.Anchor % 3,
                    text.Anchor >= Anchor.MiddleLeft
                );
            default:
                throw new NotSupportedException($"DXF: no way to write a {shape.GetType().Name}.");
        }
    }

    /// <summary>Without points that would be written alike.</summary>
    private static List<Vec2> WithoutRepeats(Polyline line, DxfOptions options)
    {
        bool Alike(Vec2 a, Vec2 b) => Rounded(a, options) == Rounded(b, options);
        List<Vec2> kept = [];
        foreach (Vec2 point in line.Points)
        {
            if (kept.Count == 0 || !Alike(kept[^1], point))
            {
                kept.Add(point);
            }
        }

        while (line.Closed && kept.Count > 1 && Alike(kept[^1], kept[0]))
        {
            kept.RemoveAt(kept.Count - 1);
        }

        return kept;
    }

    private static IEnumerable<Vec2> Corners(DxfShape shape)
    {
        switch (shape)
        {
            case DxfLine line:
                return line.Points;
            case DxfCircle circle:
                var arm = new Vec2(circle.Radius, circle.Radius);
                return [circle.Centre - arm, circle.Centre + arm];
            default:
                var text = (DxfLettering)shape;
                return [text.Left, text.Anchor];
        }
    }

    private static Vec2 Rounded(Vec2 point, DxfOptions options) =>
        new(Rounded(point.X, options), Rounded(point.Y, options));

    private static double Rounded(double millimetres, DxfOptions options) =>
        Math.Round(millimetres * options.Scale, options.Decimals) + 0.0;
}
