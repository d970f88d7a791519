using System.Collections.Immutable;
using PlankFit.Export.Views;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Comparing;

/// <summary>
/// The layers of a lay-out one below the other as the bottom is seen in plan, forward to the left, port above: small enough to look at many at once, and without a word
/// in them. A plank that is refused is dark, the master grey, tapered planks are light.
/// </summary>
/// <param name="Size">mm on paper.</param>
public sealed record SmallPicture(
    ImmutableArray<Shape> Shapes,
    (double WidthMm, double HeightMm) Size
)
{
    public const double WidthMm = 84;

    /// <summary>What no eye sees on paper, mm.</summary>
    private const double FinestMm = 0.05;
    private const double BetweenMm = 2;

    private static readonly Pen Line = new(0.13, 0.2);

    public static SmallPicture Of(BottomPlan plan)
    {
        (BottomPlan Panel, PlankLayerPlan Layer)[] layers = [.. plan.AllPlankLayers];
        (PanelSight Sight, Box Box)[] seen = [.. layers.Select(l => Seen(l.Panel, l.Layer))];
        if (seen.Length == 0)
        {
            return new([], (WidthMm, 0));
        }

        // One scale for all, and one place along the hull.
        double left = seen.Min(s => s.Box.Left),
            scale = WidthMm / (seen.Max(s => s.Box.Right) - left),
            height = seen.Sum(s => scale * s.Box.Height) + (BetweenMm * (seen.Length - 1)),
            top = height;
        SheetCanvas pad = new();
        for (int i = 0; i < layers.Length; i++)
        {
            var at = new Placing(scale, scale, new(-scale * left, top - (scale * seen[i].Box.Top)));
            Draw(pad, layers[i].Layer, seen[i].Sight, at);
            top -= (scale * seen[i].Box.Height) + BetweenMm;
        }

        return new(pad.Shapes, (WidthMm, height));
    }

    /// <summary>As a drawing by itself.</summary>
    public Drawing Alone(string title) =>
        new(title, Size.WidthMm + 2, Size.HeightMm + 2, At(new(1, 1)));

    /// <summary>With its lower left corner there, and smaller where there is less room.</summary>
    public ImmutableArray<Shape> At(Vec2 corner, double scale = 1) =>
        [
            .. Shapes
                .OfType<Polyline>()
                .Select(s => s with { Points = [.. s.Points.Select(p => corner + (scale * p))] }),
        ];

    private static (PanelSight Sight, Box Box) Seen(BottomPlan panel, PlankLayerPlan layer)
    {
        var sight = PanelSight.Of(panel, layer);
        return (
            sight,
            Box.Around(
                Enum.GetValues<Planking.Findings.Side>()
                    .SelectMany(side =>
                        layer
                            .On(side)
                            .SelectMany(p => p.OnHull.Outline.Select(q => sight.At(q, side)))
                    )
            )
        );
    }

    private static void Draw(SheetCanvas pad, PlankLayerPlan layer, PanelSight sight, Placing at)
    {
        foreach (Plank plank in layer.Starboard.Concat(layer.Port))
        {
            ImmutableArray<Vec3> outline = plank.OnHull.Outline;
            ImmutableArray<int> kept = SpaceThinning.Closed(
                outline,
                i => i == 0 || i == outline.Length / 2,
                FinestMm / at.X
            );
            pad.Closed(
                kept.Select(i => at[sight.At(outline[i], plank.Side)]),
                Line,
                Draughting.Layout.Layers.Hull,
                Fill(plank)
            );
        }
    }

    private static double? Fill(Plank plank) =>
        plank.IsRefused ? 0.3
        : plank.Kind == PlankKind.Master ? 0.65
        : plank.Kind == PlankKind.Tapered ? 0.85
        : null;
}
