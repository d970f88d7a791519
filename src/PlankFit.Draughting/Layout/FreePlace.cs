using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Layout;

/// <summary>Whether a lettering may stand somewhere.</summary>
public static class FreePlace
{
    /// <summary>Half of what letterings keep from one another, mm: nearer they read as one.</summary>
    private const double ClearMm = 0.35;

    /// <summary>Clear of all the others, turned as they may be.</summary>
    public static bool IsFree(Lettering text, IEnumerable<Lettering> others)
    {
        Vec2[] quad = Quads.Around(text, ClearMm);
        var box = Box.Around(quad);
        return !others.Any(o =>
        {
            if (IsFar(o, box))
            {
                return false;
            }

            Vec2[] other = Quads.Around(o, ClearMm);
            return Box.Around(other).Overlaps(box) && Quads.Overlap(quad, other);
        });
    }

    /// <summary>Clear of dots and rings.</summary>
    public static bool IsFree(Lettering text, IEnumerable<CircleShape> circles)
    {
        Vec2[] quad = Quads.Around(text, ClearMm);
        var box = Box.Around(quad);
        return !circles.Any(c =>
            box.Within(-c.RadiusMm).Holds(c.Centre) && Quads.Overlap(quad, Octagon(c))
        );
    }

    /// <summary>Surely nowhere near a box, told without its letters' widths: none is twice as wide as it is high.</summary>
    public static bool IsFar(Lettering text, Box box)
    {
        double reach = text.HeightMm * ((2 * text.Text.Length) + 4);
        return text.At.X < box.Left - reach
            || text.At.X > box.Right + reach
            || text.At.Y < box.Bottom - reach
            || text.At.Y > box.Top + reach;
    }

    private static Vec2[] Octagon(CircleShape circle) =>
        [
            .. Enumerable
                .Range(0, 8)
                .Select(i => Math.SinCos(i * Math.PI / 4))
                .Select(a => circle.Centre + (circle.RadiusMm * new Vec2(a.Cos, a.Sin))),
        ];

    public static bool IsIn(Box box, Lettering text) =>
        Array.TrueForAll(Quads.Around(text, 0), box.Holds);
}
