using System.Collections.Immutable;
using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>
/// A keel layer in true size, outer face up, laid out along its own length: both edges on the outer face (to saw), on the inner face (pencil), the centre
/// line and the stations. Coordinates: along the layer's outer face from its forward end, starboard below the centre line as it lies with forward to the left.
/// </summary>
public static class KeelEdgePattern
{
    private const double TextMm = 10;

    public static Drawing Of(BottomPlan plan, KeelLayerPlan layer)
    {
        double length = layer.Between.Max(r => r.AlongMm),
            widest = layer.Between.Max(r => Math.Max(r.HalfWidthMm, Inner(layer, r)));
        var shapes = ImmutableArray.CreateBuilder<Shape>();
        shapes.Add(new Polyline(Layers.Cut, Pens.Cut, Outline(layer, r => r.HalfWidthMm), true));
        if (layer.Between.Any(r => Math.Abs(r.BevelDegrees) > 0.01))
        {
            shapes.Add(
                new Polyline(Layers.Marks, Pens.Inner, Outline(layer, r => Inner(layer, r)), true)
            );
        }

        shapes.Add(new Polyline(Layers.Marks, Pens.Station, [new(0, 0), new(length, 0)], false));
        foreach (KeelStation row in layer.On(Side.Starboard))
        {
            double port = layer.On(Side.Port).Single(r => r.Station == row.Station).HalfWidthMm;
            shapes.Add(
                new Polyline(
                    Layers.Marks,
                    Pens.Tick,
                    [new(row.AlongMm, -row.HalfWidthMm), new(row.AlongMm, port)],
                    false
                )
            );
            shapes.Add(
                new Lettering(
                    Layers.Text,
                    Pen.Thin,
                    new(row.AlongMm, widest + 6),
                    row.Station,
                    TextMm,
                    Anchor.BaselineCentre
                )
            );
        }

        shapes.Add(
            new Lettering(
                Layers.Text,
                Pen.Thin,
                new(0, -widest - 6 - TextMm),
                $"{layer.Spec.Name}, outer face up, forward to the left, rev {plan.Job.Revision}",
                TextMm,
                Anchor.BaselineLeft
            )
        );
        return new(
            $"{plan.Job.Name}: {layer.Spec.Name}, full size",
            length,
            2 * widest,
            shapes.ToImmutable()
        );
    }

    private static double Inner(KeelLayerPlan layer, KeelStation row) =>
        row.HalfWidthMm - (Math.Tan(row.BevelDegrees * Math.PI / 180) * layer.Spec.ThicknessMm);

    private static ImmutableArray<Vec2> Outline(
        KeelLayerPlan layer,
        Func<KeelStation, double> halfWidth
    ) =>
        [
            .. layer
                .Between.Where(r => r.Side == Side.Starboard)
                .Select(r => new Vec2(r.AlongMm, -halfWidth(r))),
            .. layer
                .Between.Where(r => r.Side == Side.Port)
                .Reverse()
                .Select(r => new Vec2(r.AlongMm, halfWidth(r))),
        ];
}
