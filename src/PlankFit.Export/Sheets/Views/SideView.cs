using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>
/// One side of a layer as it stands upside down in the shop, seen by one who stands outboard facing it: keel on top, chine below. With the hull upside down,
/// forward lies to the left of one who faces the starboard side, and to the right of one who faces the port side (right = look × up, up being the hull's down).
/// Drawn square to the bottom's mean slope, so that planks are hardly foreshortened.
/// </summary>
internal static class SideView
{
    public static SheetPage Page(BottomPlan plan, PlankLayerPlan layer, Side side)
    {
        SheetFormat format = SheetFormat.Wall(plan.Job);
        Box inside = Frame.Inside(format).Within(16);
        int turn = side == Side.Starboard ? 1 : -1;
        Vec3 slope = MeanSlope(layer);
        Vec2 Seen(Vec3 p) => new(turn * p.X, -(slope.Y * Math.Abs(p.Y) + (slope.Z * p.Z)));
        Box hull = Box.Around(layer.Outline.Select(Seen));
        Ratio ratio = Ratio.Fitting(hull, inside.Width, inside.Height - 24, plan.Job.Units);
        Placing at = Placing.Centred(hull, inside, ratio.Factor, ratio.Factor);
        var forward = new Vec2(-turn, 0);
        var block = new TitleBlock(
            "The side as it stands upside down",
            $"{SheetWords.Of(side, layer)}; keel on top, seen from outboard",
            "scale " + ratio,
            forward,
            Cautions.Check
        );
        return new(
            format,
            block,
            (pad, _) =>
            {
                pad.Closed(layer.Outline.Select(p => at[Seen(p)]), Pens.HullEdge, Layers.Hull);
                PlankNumbers.Draw(
                    pad,
                    [
                        .. layer
                            .On(side)
                            .Select(p => (p, (IReadOnlyList<Vec2>)at.Of(p.Outline.Select(Seen)))),
                    ]
                );
                Box shown = Box.Around(layer.Outline.Select(p => at[Seen(p)]));
                pad.Text(
                    inside.Left,
                    inside.Top - Letters.Name,
                    $"{PlankWords.Of(side).ToUpperInvariant()}, {SheetWords.Of(layer)}: planks {layer.On(side)[0].Id} to {layer.On(side)[^1].Id}",
                    Letters.Name,
                    bold: true
                );
                pad.Text(
                    inside.Left,
                    inside.Top - Letters.Name - 6,
                    $"You face the {PlankWords.Of(side)} side; the hull is upside down; forward is to your {(turn > 0 ? "left" : "right")}. The master plank, number {layer.MasterNumber}, is grey.",
                    Letters.Bench
                );
                ForwardArrow.Draw(pad, new Vec2(inside.Middle.X, shown.Bottom - 12), forward, 24);
                pad.Text(
                    inside.Middle.X,
                    shown.Bottom - 21,
                    "forward",
                    Letters.Heading,
                    Anchor.BaselineCentre
                );
                Stations(pad, plan, layer, p => at[Seen(p)], shown);
            }
        );
    }

    private static void Stations(
        Pad pad,
        BottomPlan plan,
        PlankLayerPlan layer,
        Func<Vec3, Vec2> seen,
        Box shown
    )
    {
        double last = double.NegativeInfinity;
        foreach (
            (StationOnHull station, Vec2 keel) in plan
                .Hull.Stations.Select(s => (s, seen(layer.Surface.At(s.U, 0).P)))
                .OrderBy(s => s.Item2.X)
        )
        {
            double y = shown.Top + 3;
            pad.Line(keel.X, y, keel.X, y + 3, Pens.Measure);
            if (keel.X - last > Letters.Width(station.Name, Letters.Bench) + 2)
            {
                pad.Text(keel.X, y + 4, station.Name, Letters.Bench, Anchor.BaselineCentre);
                last = keel.X;
            }
        }
    }

    /// <summary>Unit direction from keel to chine, athwartships, the mean over the layer's outline.</summary>
    private static Vec3 MeanSlope(PlankLayerPlan layer)
    {
        double y = layer.Outline.Average(p => p.Y),
            z = layer.Outline.Average(p => p.Z);
        double yy = layer.Outline.Sum(p => (p.Y - y) * (p.Y - y)),
            yz = layer.Outline.Sum(p => (p.Y - y) * (p.Z - z));
        return new Vec3(0, yy, Math.Max(0, yz)).Unit();
    }
}
