using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Tests.Export;

/// <summary>Drawings with every kind of shape, at places that are easy to find again in a file.</summary>
internal static class SampleDrawings
{
    /// <summary>A4 upright: a 100 mm square with its lower left corner at (20, 150), a closed skew outline, dashes, circles, lettering in every position.</summary>
    public static Drawing Everything { get; } =
        new(
            "S1-07 <outer> & \"face\"",
            210,
            297,
            [
                new Polyline("cut", Pen.Medium, Square(20, 150, 100), true),
                new Polyline(
                    "net",
                    Pen.Thin,
                    [new(20, 100), new(120.5, 97.25), new(131.125, 120), new(30, 130)],
                    true,
                    0.9
                ),
                new Polyline("marks", Pen.Dashed, [new(20, 80), new(120, 80)], false),
                new Polyline("marks", Pen.Dashed, Square(150, 200, 30), true),
                new CircleShape("marks", Pen.Thin, new(160, 100), 10),
                new CircleShape("marks", Pen.Dashed, new(160, 100), 14),
                new CircleShape("marks", new Pen(0), new(160, 100), 2, 0),
                new Lettering("text", Pen.Thin, new(20, 60), "S1-07 outer face up, 12½° ⅝ in", 5),
                new Lettering(
                    "text",
                    Pen.Thin,
                    new(105, 45),
                    "HEADS AFT",
                    6,
                    Anchor.MiddleCentre,
                    0,
                    true
                ),
                new Lettering("text", Pen.Thin, new(190, 20), "right end", 3, Anchor.BaselineRight),
                new Lettering(
                    "text",
                    Pen.Thin,
                    new(200, 100),
                    "upwards",
                    4,
                    Anchor.BaselineLeft,
                    90
                ),
                new Lettering("text", Pen.Thin, new(40, 20), "slanting", 4, Anchor.MiddleLeft, 30),
            ]
        );

    public static ImmutableArray<Vec2> Square(double x, double y, double side) =>
        [new(x, y), new(x + side, y), new(x + side, y + side), new(x, y + side)];

    /// <summary>A drawing of these shapes on a sheet of this size.</summary>
    public static Drawing Of(double width, double height, params ImmutableArray<Shape> shapes) =>
        new("sample", width, height, shapes);
}
