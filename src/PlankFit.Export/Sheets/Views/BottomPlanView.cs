using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>One layer of the bottom in plan, both sides, seen from outside (from below; from above as the hull lies upside down), forward to the left.</summary>
public static class BottomPlanView
{
    public static Drawing Of(BottomPlan plan, PlankLayerPlan layer)
    {
        SheetFormat format = SheetFormat.Wall(plan.Job);
        Box inside = Frame.Inside(format).Within(14);
        Box hull = Box.Around(
            layer.Outline.SelectMany(p => new[] { Seen(p), Seen(p.MirroredInY()) })
        );
        Ratio ratio = Ratio.Fitting(hull, inside.Width, inside.Height - 12, plan.Job.Units);
        var block = new TitleBlock(
            "The bottom in plan",
            $"both sides, {SheetWords.Of(layer)}; outer face up: seen from outside, as the hull lies upside down",
            "scale " + ratio,
            new Vec2(-1, 0),
            Cautions.Overview
        );
        return SheetPage.Numbered(
            plan.Job,
            [
                new(
                    format,
                    block,
                    (pad, _) =>
                        Draw(
                            pad,
                            plan,
                            layer,
                            Placing.Centred(hull, inside, ratio.Factor, ratio.Factor),
                            inside
                        )
                ),
            ]
        )[0];
    }

    /// <summary>From below, forward to the left: port comes to the top.</summary>
    private static Vec2 Seen(Vec3 p) => new(p.X, -p.Y);

    private static void Draw(Pad pad, BottomPlan plan, PlankLayerPlan layer, Placing at, Box inside)
    {
        foreach (Side side in new[] { Side.Starboard, Side.Port })
        {
            Box edge = Box.Around(
                layer.Outline.Select(p => at[Seen(side == Side.Port ? p.MirroredInY() : p)])
            );
            pad.Closed(
                layer.Outline.Select(p => at[Seen(side == Side.Port ? p.MirroredInY() : p)]),
                Pens.HullEdge,
                Layers.Hull
            );
            double y = side == Side.Port ? edge.Top + 4 : edge.Bottom - 4 - Letters.Bench;
            string heads =
                $"{PlankWords.Of(side)}: planks {layer.On(side)[0].Id} to {layer.On(side)[^1].Id}, heading {PlankWords.Of(layer.Planks.Heads)}; the master plank, number {layer.MasterNumber}, is grey";
            pad.Text(edge.Middle.X, y, heads, Letters.Bench, Anchor.BaselineCentre);
        }

        // Both sides at once: a leader from one must not end in the other.
        PlankNumbers.Draw(
            pad,
            [
                .. layer
                    .Starboard.Concat(layer.Port)
                    .Select(p => (p, (IReadOnlyList<Vec2>)at.Of(p.Outline.Select(Seen)))),
            ]
        );
        StationMarks.Draw(pad, plan, layer, at, p => Seen(p), inside);
    }
}
