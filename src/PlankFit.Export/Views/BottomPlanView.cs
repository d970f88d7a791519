using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Views;

/// <summary>One layer of the bottom in plan, both sides, seen from outside (from below; from above as the hull lies upside down), forward to the left.</summary>
public static class BottomPlanView
{
    private const double HeadMm = 17;
    private const double NamesMm = 9;

    public static Drawing Of(BottomPlan plan, PlankLayerPlan layer)
    {
        SheetFormat format = SheetFormat.Wall(plan.Job);
        var edges = LayerEdges.Of(plan, layer);
        Box inside = Frame.Inside(format).Within(8);
        Box hull = Box.Around(
            layer.Outline.SelectMany(p => new[] { Seen(p), Seen(p.MirroredInY()) })
        );
        Ratio ratio = Ratio.Fitting(
            hull,
            inside.Width - 16,
            inside.Height - HeadMm - NamesMm,
            plan.Job.Units
        );
        double height = ratio.Factor * hull.Height,
            left = inside.Height - HeadMm - height - NamesMm;
        var table = PlankSizes.Fitting(layer, plan.Job.Units, inside.Width, left);
        // What room is left over goes above the drawing, above the table and below it alike.
        double space = Math.Max(0, left - (table?.HeightMm ?? 0)) / 3,
            top = inside.Top - HeadMm - space,
            foot = top - height;
        var at = Placing.Centred(
            hull,
            new Box(inside.Left, foot, inside.Right, top),
            ratio.Factor,
            ratio.Factor
        );
        var block = new TitleBlock(
            "The bottom in plan",
            $"both sides, {SheetWords.Of(layer)}, outer face up",
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
                    {
                        Heading(pad, inside, layer, edges.Beyond(plan));
                        Draw(pad, edges, layer, at, foot);
                        table?.Draw(pad, inside.Left, foot - NamesMm - space);
                    }
                ),
            ]
        )[0];
    }

    /// <summary>From below, forward to the left: port comes to the top.</summary>
    private static Vec2 Seen(Vec3 p) => new(p.X, -p.Y);

    private static void Heading(SheetCanvas pad, Box inside, PlankLayerPlan layer, string beyond)
    {
        pad.Text(
            inside.Left,
            inside.Top - Letters.Name,
            $"{SheetWords.Of(layer)}: planks {layer.Starboard[0].Id} to {layer.Starboard[^1].Id} and {layer.Port[0].Id} to {layer.Port[^1].Id}",
            Letters.Name,
            bold: true
        );
        pad.Text(
            inside.Left,
            inside.Top - Letters.Name - 6,
            "Seen from outside, as the hull lies upside down: port above, starboard below, forward to the left. Going outboard planks head "
                + $"{PlankWords.Of(layer.Planks.Heads)}. The master plank, number {layer.MasterNumber}, is grey.{beyond}",
            Letters.Bench
        );
    }

    private static void Draw(
        SheetCanvas pad,
        LayerEdges edges,
        PlankLayerPlan layer,
        Placing at,
        double foot
    )
    {
        // Both sides at once: a leader from one must not end in the other.
        PlankNumbers.Usual.Draw(
            pad,
            [
                .. layer
                    .Starboard.Concat(layer.Port)
                    .Select(p => (p, (IReadOnlyList<Vec2>)at.Of(p.OnHull.Outline.Select(Seen)))),
            ]
        );
        foreach (bool port in new[] { false, true })
        {
            pad.Closed(
                layer.Outline.Select(p => at[Seen(port ? p.MirroredInY() : p)]),
                Pens.HullEdge,
                Layers.Hull
            );
        }

        ImmutableArray<StationLine> stations = edges.Stations;
        StationNames.Row(
            pad,
            stations.Select(s => (s.Name, at[Seen(s.Chine)].X)),
            foot - NamesMm + 1
        );
        foreach (StationLine station in stations)
        {
            Vec2 chine = at[Seen(station.Chine)];
            BrokenLine.Draw(
                pad,
                at[Seen(station.Chine.MirroredInY())],
                at[Seen(station.Keel.MirroredInY())],
                Pens.Station
            );
            BrokenLine.Draw(
                pad,
                at[Seen(station.Keel.MirroredInY())],
                at[Seen(station.Keel)],
                Pens.Station
            );
            BrokenLine.Draw(pad, at[Seen(station.Keel)], chine, Pens.Station);
            BrokenLine.Draw(
                pad,
                chine - new Vec2(0, 1),
                new(chine.X, foot - NamesMm + 3 + Letters.Bench),
                Pens.Station
            );
        }
    }
}
