using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Tiling;

/// <summary>
/// Squares to lay a rule against before anything is cut: 100 mm, and 4 in where inches are used. They stand where they cross the fewest lines of the drawing.
/// </summary>
public static class CheckSquares
{
    public const string Layer = "check";
    public const double MetricMm = 100;
    public const double InchesMm = 4 * 25.4;

    private const double InsetMm = 14; // off the sides, where the crosses and their codes are
    private const double ApartMm = 6;
    private static readonly Pen Line = new(0.13, 0.45);

    /// <param name="room">Where they may stand, at least 128 mm each way, and 236 mm one way where there are two of them.</param>
    public static IEnumerable<Shape> In(Window room, IReadOnlyList<Shape> drawn, bool inches)
    {
        List<(Vec2 Corner, double Crossed)> metric = Places(room, MetricMm, drawn);
        if (!inches)
        {
            return Square(metric.MinBy(p => p.Crossed).Corner, MetricMm, "100 mm");
        }

        (Vec2 first, Vec2 second) = (
            from one in metric
            from other in Places(room, InchesMm, drawn)
            where AreApart(one.Corner, other.Corner)
            orderby one.Crossed + other.Crossed
            select (one.Corner, other.Corner)
        ).First();
        return Square(first, MetricMm, "100 mm").Concat(Square(second, InchesMm, "4\""));
    }

    private static IEnumerable<Shape> Square(Vec2 corner, double side, string name)
    {
        (Vec2 x, Vec2 y) = (new Vec2(side, 0), new Vec2(0, side));
        ImmutableArray<Vec2> points = [corner, corner + x, corner + x + y, corner + y];
        yield return new Polyline(Layer, Line, points, true);
        yield return new Lettering(
            Layer,
            Line,
            corner + new Vec2(2, 2),
            $"{name} square: measure both ways before you cut",
            2
        );
    }

    /// <summary>Nine places for a square, and the length of the drawing's lines that each would cover.</summary>
    private static List<(Vec2 Corner, double Crossed)> Places(
        Window room,
        double side,
        IReadOnlyList<Shape> drawn
    )
    {
        var spare = new Vec2(room.Width - (2 * InsetMm) - side, room.Height - (2 * InsetMm) - side);
        IEnumerable<Vec2> corners =
            from down in (double[])[0, 0.5, 1]
            from across in (double[])[0, 0.5, 1]
            select room.Least + new Vec2(InsetMm + (across * spare.X), InsetMm + (down * spare.Y));
        return [.. corners.Select(corner => (corner, LengthIn(drawn, corner, side)))];
    }

    private static bool AreApart(Vec2 metric, Vec2 inches) =>
        inches.X >= metric.X + MetricMm + ApartMm
        || inches.X + InchesMm + ApartMm <= metric.X
        || inches.Y >= metric.Y + MetricMm + ApartMm
        || inches.Y + InchesMm + ApartMm <= metric.Y;

    private static double LengthIn(IReadOnlyList<Shape> drawn, Vec2 corner, double side)
    {
        var window = new Window(corner, corner + new Vec2(side, side));
        double length = 0.0;
        foreach (Shape shape in drawn)
        {
            switch (shape)
            {
                case Polyline line:
                    foreach (
                        (ImmutableArray<Vec2> points, bool _) in window.Cut(
                            line.Points,
                            line.Closed
                        )
                    )
                    {
                        for (int i = 1; i < points.Length; i++)
                        {
                            length += points[i].ChordTo(points[i - 1]);
                        }
                    }

                    break;
                case Lettering text when window.Holds(text.At):
                    length += text.WidthMm();
                    break;
            }
        }

        return length;
    }
}
