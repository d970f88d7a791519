using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting;

/// <summary>
/// A neutral drawing in millimetres, y up, origin at the sheet's lower left corner: what every backend (DXF, SVG, PDF, PNG) is given, and all that it knows.
/// </summary>
/// <param name="Title">For the file's own title field.</param>
public sealed record Drawing(
    string Title,
    double WidthMm,
    double HeightMm,
    ImmutableArray<Shape> Shapes
)
{
    /// <summary>What the sheet is looked for by in a book, from the wider to the narrower: "starboard, layer 1", then "S1-07, S1-08". Empty where it is one of a run.</summary>
    public ImmutableArray<string> FoundBy { get; init; } = [];
}

/// <summary>One thing drawn. Layer is a shop operation or a kind of information: "cut", "net", "marks", "text", ...</summary>
public abstract record Shape(string Layer, Pen Pen)
{
    /// <summary>The same shape somewhere else on its sheet.</summary>
    public Shape MovedBy(Vec2 shift) =>
        this switch
        {
            Polyline line => line with { Points = [.. line.Points.Select(p => p + shift)] },
            CircleShape circle => circle with { Centre = circle.Centre + shift },
            Lettering text => text with { At = text.At + shift },
            _ => throw new InvalidOperationException($"{GetType().Name} cannot be moved"),
        };
}

/// <summary>A polyline; a closed one does not repeat its first point. Fill is a grey from 0 (black) to 1 (white), or null.</summary>
public sealed record Polyline(
    string Layer,
    Pen Pen,
    ImmutableArray<Vec2> Points,
    bool Closed,
    double? Fill = null
) : Shape(Layer, Pen);

public sealed record CircleShape(
    string Layer,
    Pen Pen,
    Vec2 Centre,
    double RadiusMm,
    double? Fill = null
) : Shape(Layer, Pen);

/// <summary>One line of lettering.</summary>
/// <param name="At">The anchor point on the baseline (or on the middle of the capitals).</param>
/// <param name="HeightMm">Height of the capitals.</param>
/// <param name="TurnDegrees">Counter-clockwise from +x.</param>
public sealed record Lettering(
    string Layer,
    Pen Pen,
    Vec2 At,
    string Text,
    double HeightMm,
    Anchor Anchor = Anchor.BaselineLeft,
    double TurnDegrees = 0,
    bool Bold = false
) : Shape(Layer, Pen)
{
    /// <summary>What it speaks of, for who looks at the sheet on a screen and is to be led there; empty where nothing is known of it. No pen draws it.</summary>
    public string About { get; init; } = "";
}

public enum Anchor
{
    BaselineLeft,
    BaselineCentre,
    BaselineRight,
    MiddleLeft,
    MiddleCentre,
    MiddleRight,
}

/// <summary>A line's width in mm (0 for no line: a fill alone), its grey from 0 (black) to 1 (white), and its dashes in mm (empty for a full line).</summary>
public sealed record Pen(double WidthMm, double Grey = 0, ImmutableArray<double> DashesMm = default)
{
    public static readonly Pen Thin = new(0.13);
    public static readonly Pen Medium = new(0.25);
    public static readonly Pen Thick = new(0.5);
    public static readonly Pen Dashed = new(0.18, 0, [2.5, 1.5]);

    public bool IsDashed => !DashesMm.IsDefaultOrEmpty;
}
