using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

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
    public static IEnumerable<Shape> Holes(BottomPlan plan, Plank plank, Vec2 shift)
    {
        if (plan.Fastenings?.On(plank.Id) is not { } made)
        {
            yield break;
        }

        double radius = plan.Fastenings.Layers.First(l => l.Layer == plank.Layer).Rule.HoleMm / 2;
        foreach (Fastening f in made.Points)
        {
            yield return new CircleShape(LayerOf(f.Use, f.Kind), Pens.Tick, f.At + shift, radius);
        }
    }

    /// <summary>For a pencil: signs in full size.</summary>
    public static IEnumerable<Shape> Signs(BottomPlan plan, Plank plank, Vec2 shift) =>
        (plan.Fastenings?.On(plank.Id)?.Points ?? []).SelectMany(f =>
            Sign(f.Use, f.Kind, f.At + shift, SignMm, Pens.Outer)
        );

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
        Polyline Stroke(double x, double y) =>
            new(layer, pen, [at + new Vec2(-x, -y), at + new Vec2(x, y)], false);
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
            case (_, FasteningKind.ScrewAndPad):
                yield return new CircleShape(layer, pen, at, size);
                yield return Stroke(1.5 * size, 0);
                yield return Stroke(0, 1.5 * size);
                break;
            default:
                yield return new CircleShape(layer, pen, at, size);
                yield return Stroke(1.5 * size, 0);
                break;
        }
    }
}
