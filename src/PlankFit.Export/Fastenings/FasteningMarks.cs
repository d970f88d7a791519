using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Fastenings;

namespace PlankFit.Export.Fastenings;

/// <summary>
/// Fastenings as they are marked: each kind by a sign of its own and on a layer of its own. In a cutting pattern a circle of the hole's diameter alone, so
/// that a machine may drill it.
/// </summary>
internal static class FasteningMarks
{
    private const double SignMm = 2.2;

    /// <summary>The layer of a kind: one operation in the shop.</summary>
    public static string LayerOf(FasteningUse use, FasteningKind kind) =>
        (use, kind) switch
        {
            (FasteningUse.PullDown, _) => "fasten-pull-down",
            (FasteningUse.Vent, _) => "fasten-vent",
            (_, FasteningKind.LeftIn) => "fasten-left-in",
            (_, FasteningKind.ScrewAndPad) => "fasten-screw-pad",
            _ => "fasten-staple-strap",
        };

    /// <summary>For a machine: holes in their own size.</summary>
    public static IEnumerable<CircleShape> Holes(
        PlankFastenings made,
        FasteningRule rule,
        Vec2 shift
    ) =>
        made.Points.Select(f => new CircleShape(
            LayerOf(f.Use, f.Kind),
            Pens.Tick,
            f.At + shift,
            rule.HoleMm / 2
        ));

    /// <summary>For a pencil: signs in full size.</summary>
    public static IEnumerable<Shape> Signs(PlankFastenings made, Vec2 shift) =>
        made.Points.SelectMany(f => Sign(f.Use, f.Kind, f.At + shift, SignMm, Pens.Outer));

    /// <param name="size">Half the sign's width, mm on the sheet.</param>
    public static IEnumerable<Shape> Sign(
        FasteningUse use,
        FasteningKind kind,
        Vec2 at,
        double size,
        Pen pen
    )
    {
        string layer = LayerOf(use, kind);
        double d = size * 0.8;
        switch (use, kind)
        {
            case (FasteningUse.PullDown, _):
                // One stroke of the pen: round the square, then across.
                yield return new Polyline(
                    layer,
                    pen,
                    [
                        at + new Vec2(-d, -d),
                        at + new Vec2(d, -d),
                        at + new Vec2(d, d),
                        at + new Vec2(-d, d),
                        at + new Vec2(-d, -d),
                        at + new Vec2(d, d),
                    ],
                    false
                );
                break;
            case (FasteningUse.Vent, _):
                yield return new CircleShape(layer, pen, at, size);
                yield return new CircleShape(layer, pen, at, size / 2);
                break;
            case (_, FasteningKind.LeftIn):
                yield return new CircleShape(layer, pen, at, size * 0.7, 0);
                break;
            default:
                yield return new Polyline(
                    layer,
                    pen,
                    [.. Pin(size, kind == FasteningKind.ScrewAndPad).Select(p => at + p)],
                    false
                );
                break;
        }
    }

    /// <summary>A circle with a bar through it, or a cross, in one stroke of the pen: a plan has thousands of them.</summary>
    private static IEnumerable<Vec2> Pin(double size, bool cross)
    {
        const int corners = 12;
        double reach = 1.5 * size;
        yield return new(reach, 0);
        for (int i = 0; i <= corners; i++)
        {
            (double sin, double cos) = Math.SinCos(2 * Math.PI * i / corners);
            yield return new(size * cos, size * sin);
        }

        yield return new(-reach, 0);
        if (cross)
        {
            yield return new(0, 0);
            yield return new(0, reach);
            yield return new(0, -reach);
        }
    }
}
