using System.Collections.Immutable;
using PlankFit.Draughting.Layout;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Tiling;

/// <summary>What a window shows of a drawing, still in the drawing's own place.</summary>
public static class TileContent
{
    private const double CircleSagMm = 0.01;

    /// <summary>What a word keeps from the edge of its page.</summary>
    private const double ClearMm = 0.3;

    /// <summary>
    /// Lines and areas cut at the window. Lettering cannot be cut: it goes whole on every page that holds all of it, and where none does on the page
    /// that holds its middle.
    /// </summary>
    public static IEnumerable<Shape> In(
        Drawing drawing,
        Window window,
        IReadOnlyList<Tile> tiles
    ) =>
        drawing.Shapes.SelectMany(shape =>
            shape switch
            {
                Polyline line => In(line, window),
                CircleShape circle => In(circle, window),
                Lettering text when IsWhole(text, window) => [text],
                Lettering text
                    when window.Holds(Middle(text)) && !tiles.Any(t => IsWhole(text, t.Window)) =>
                [
                    text,
                ],
                Lettering => [],
                _ => throw new NotSupportedException(
                    $"No way to cut a {shape.GetType().Name} into pages."
                ),
            }
        );

    /// <summary>Whether a page is needed there; lettering alone asks for one by its middle.</summary>
    public static bool IsAnyIn(Drawing drawing, Window window) =>
        drawing.Shapes.Any(shape =>
            shape switch
            {
                Polyline line => In(line, window).Any(),
                CircleShape circle => In(circle, window).Any(),
                Lettering text => window.Holds(Middle(text)),
                _ => true,
            }
        );

    private static IEnumerable<Shape> In(Polyline line, Window window)
    {
        if (Misses(line.Points, window))
        {
            yield break;
        }

        List<(ImmutableArray<Vec2> Points, bool Closed)> pieces = window.Cut(
            line.Points,
            line.Closed
        );
        if (pieces is [{ Points: var whole }] && whole == line.Points)
        {
            yield return line;
            yield break;
        }

        if (line.Fill is not null && window.CutArea(line.Points) is { Length: > 2 } area)
        {
            yield return new Polyline(line.Layer, new Pen(0), area, true, line.Fill);
        }

        foreach ((ImmutableArray<Vec2> points, bool closed) in pieces)
        {
            yield return new Polyline(line.Layer, line.Pen, points, closed);
        }
    }

    private static IEnumerable<Shape> In(CircleShape circle, Window window)
    {
        var arm = new Vec2(circle.RadiusMm, circle.RadiusMm);
        if (window.Holds(circle.Centre - arm) && window.Holds(circle.Centre + arm))
        {
            return [circle];
        }

        ImmutableArray<Vec2> round = Circles.Polygon(circle.Centre, circle.RadiusMm, CircleSagMm);
        return In(new Polyline(circle.Layer, circle.Pen, round, true, circle.Fill), window);
    }

    private static bool Misses(ImmutableArray<Vec2> points, Window window)
    {
        (Vec2 least, Vec2 most) = (points[0], points[0]);
        foreach (Vec2 p in points)
        {
            least = new(Math.Min(least.X, p.X), Math.Min(least.Y, p.Y));
            most = new(Math.Max(most.X, p.X), Math.Max(most.Y, p.Y));
        }

        return most.X < window.Least.X
            || least.X > window.Most.X
            || most.Y < window.Least.Y
            || least.Y > window.Most.Y;
    }

    /// <summary>What hangs below its baseline too.</summary>
    private static bool IsWhole(Lettering text, Window window) =>
        Array.TrueForAll(Quads.Around(text, ClearMm), window.Holds);

    private static Vec2 Middle(Lettering text) =>
        text.LeftEnd()
        + (0.5 * ((text.WidthMm() * text.Along()) + (text.HeightMm * text.Along().Left())));
}
