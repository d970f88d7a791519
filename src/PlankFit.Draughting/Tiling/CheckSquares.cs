using System.Collections.Immutable;
using PlankFit.Draughting.Layout;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Tiling;

/// <summary>
/// Squares to lay a rule against before anything is cut: 100 mm, and 4 in where inches are used. On a long page they stand clear of the drawing, below it where
/// there is no such place in it; on a page of many they are two sides of the square alone, on the page's frame, so that nothing is drawn across a plank.
/// </summary>
public static class CheckSquares
{
    public const string Layer = "check";
    public const double MetricMm = 100;
    public const double InchesMm = 4 * 25.4;

    /// <summary>What they need below a drawing in which they find no place.</summary>
    public const double BandMm = InchesMm + (2 * ApartMm);

    private const double InsetMm = 14; // off the sides, where the crosses and their codes are
    private const double ApartMm = 6;
    private const double WordsMm = 2;
    private static readonly Pen Line = new(0.13, 0.45);
    private static readonly Pen OnFrame = new(0.35);
    private static readonly double[] Down = [0, 0.25, 0.5, 0.75, 1];
    private static readonly double[] Across = [.. Enumerable.Range(0, 13).Select(i => i / 12.0)];

    /// <summary>Where the squares cross nothing that is drawn; null where there is no such place.</summary>
    /// <param name="room">Where they may stand, at least 128 mm each way, and 236 mm one way where there are two of them.</param>
    public static IEnumerable<Shape>? Clear(Window room, IReadOnlyList<Shape> drawn, bool inches)
    {
        Vec2[] metric = Places(room, MetricMm, drawn);
        if (!inches)
        {
            return metric.Length == 0 ? null : Square(metric[0], MetricMm, "100 mm");
        }

        Vec2[] other = Places(room, InchesMm, drawn);
        foreach (Vec2 first in metric)
        {
            foreach (Vec2 second in other.Where(o => AreApart(first, o)))
            {
                return Square(first, MetricMm, "100 mm").Concat(Square(second, InchesMm, "4\""));
            }
        }

        return null;
    }

    /// <summary>Side by side in a band of <see cref="BandMm"/>.</summary>
    public static IEnumerable<Shape> InBand(Vec2 corner, bool inches)
    {
        Vec2 first = corner + new Vec2(InsetMm, ApartMm),
            second = first + new Vec2(MetricMm + ApartMm, 0);
        return Square(first, MetricMm, "100 mm")
            .Concat(inches ? Square(second, InchesMm, "4\"") : []);
    }

    /// <summary>Along a page's frame from its lower left corner; that in inches from its upper right one. The words stand outside, along the side.</summary>
    public static IEnumerable<Shape> OnPage(Window page, bool inches)
    {
        Vec2 x = new(MetricMm, 0),
            y = new(0, MetricMm);
        yield return new Polyline(
            Layer,
            OnFrame,
            [page.Least + y, page.Least, page.Least + x],
            false
        );
        yield return Words(page.Least + new Vec2(-1.4, 0), "100 mm");
        if (inches)
        {
            (x, y) = (new(InchesMm, 0), new(0, InchesMm));
            yield return new Polyline(
                Layer,
                OnFrame,
                [page.Most - y, page.Most, page.Most - x],
                false
            );
            yield return Words(page.Most - y + new Vec2(1.4 + WordsMm, 0), "4\"");
        }
    }

    private static Lettering Words(Vec2 at, string size) =>
        new(
            Layer,
            Pen.Thin,
            at,
            $"thick line: {size} long both ways; measure before you cut",
            WordsMm,
            TurnDegrees: 90
        );

    private static IEnumerable<Shape> Square(Vec2 corner, double side, string name)
    {
        (Vec2 x, Vec2 y) = (new Vec2(side, 0), new Vec2(0, side));
        ImmutableArray<Vec2> points = [corner, corner + x, corner + x + y, corner + y];
        yield return new Polyline(Layer, Line, points, true);
        yield return new Lettering(
            Layer,
            Pen.Thin,
            corner + new Vec2(3, 3),
            $"{name} square: measure both ways before you cut",
            2.5
        );
    }

    /// <summary>Places for a square that cross nothing of the drawing.</summary>
    private static Vec2[] Places(Window room, double side, IReadOnlyList<Shape> drawn)
    {
        var spare = new Vec2(room.Width - (2 * InsetMm) - side, room.Height - (2 * InsetMm) - side);
        return
        [
            .. (
                from down in Down
                from across in Across
                select room.Least
                    + new Vec2(InsetMm + (across * spare.X), InsetMm + (down * spare.Y))
            ).Where(corner => IsClear(drawn, corner, side)),
        ];
    }

    private static bool AreApart(Vec2 metric, Vec2 inches) =>
        inches.X >= metric.X + MetricMm + ApartMm
        || inches.X + InchesMm + ApartMm <= metric.X
        || inches.Y >= metric.Y + MetricMm + ApartMm
        || inches.Y + InchesMm + ApartMm <= metric.Y;

    private static bool IsClear(IReadOnlyList<Shape> drawn, Vec2 corner, double side)
    {
        var window = new Window(corner, corner + new Vec2(side, side));
        return !drawn.Any(shape =>
            shape switch
            {
                Polyline line => window.Cut(line.Points, line.Closed).Count > 0,
                CircleShape circle => window.Holds(circle.Centre),
                Lettering text => Overlap(window, text),
                _ => false,
            }
        );
    }

    /// <summary>Whether the upright box round a lettering comes into a window.</summary>
    private static bool Overlap(Window window, Lettering text)
    {
        var box = Box.Around(Quads.Around(text, 1));
        return box.Left < window.Most.X
            && box.Right > window.Least.X
            && box.Bottom < window.Most.Y
            && box.Top > window.Least.Y;
    }
}
