using System.Collections.Immutable;
using PlankFit.Export.Framing;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Views;

/// <summary>One layer of a panel, both sides, seen from outside, forward to the left: the bottom in plan (from below; from above as the hull lies upside down).</summary>
public static class BottomPlanView
{
    private const double HeadMm = 17;
    private const double NamesMm = 9;

    public static Drawing Of(BottomPlan plan, PlankLayerPlan layer)
    {
        var format = SheetFormat.Wall(plan.Job);
        var edges = LayerEdges.Of(plan, layer);
        Box inside = Frame.Inside(format).Within(8);
        var view = LayerInPlan.Of(
            plan,
            layer,
            new(inside.Left + 8, inside.Bottom + NamesMm, inside.Right - 8, inside.Top - HeadMm)
        );
        double height = view.Ratio.Factor * view.Hull.Height,
            left = inside.Height - HeadMm - height - NamesMm;
        var table = PlankSizes.Fitting(layer, plan.Job.Units, inside.Width, left);
        // What room is left over goes above the drawing, above the table and below it alike.
        double space = Math.Max(0, left - (table?.HeightMm ?? 0)) / 3,
            top = inside.Top - HeadMm - space,
            foot = top - height;
        view = view.In(new(inside.Left, foot, inside.Right, top));
        return OverviewSheet.Of(
            plan.Job,
            (
                layer.Panel.HasKeel ? "The bottom in plan" : $"The {layer.Panel.Name} opened out",
                $"both sides, {SheetWords.Of(layer)}, outer face up"
            ),
            view.Ratio,
            Cautions.Overview,
            pad =>
            {
                Heading(
                    pad,
                    inside,
                    layer,
                    view.Said + edges.Beyond(plan) + BehindOnViews.Said(plan)
                );
                Plank[] planks = [.. layer.Starboard, .. layer.Port];
                view.DrawBehind(pad);
                BehindOnViews.Shade(pad, plan, planks, view.On);
                Draw(pad, inside, edges, view, foot);
                table?.Draw(pad, inside.Left, foot - NamesMm - space);
                BehindOnViews.Draw(pad, plan, planks, view.On, inside);
            }
        );
    }

    private static void Heading(SheetCanvas pad, Box inside, PlankLayerPlan layer, string beyond)
    {
        pad.Text(
            inside.Left,
            inside.Top - Letters.Name,
            $"{SheetWords.Of(layer)}: planks {layer.Starboard[0].Id} to {layer.Starboard[^1].Id} and {layer.Port[0].Id} to {layer.Port[^1].Id}",
            Letters.Name,
            bold: true
        );
        pad.Paragraph(
            inside.Left,
            inside.Top - Letters.Name - 6 + Letters.Bench,
            inside.Width,
            (
                layer.Panel.HasKeel
                    ? "Seen from outside, as the hull lies upside down: port above, starboard below, forward to the left. Going outboard planks head "
                    : $"Seen from outside, both sides opened out from the {layer.Panel.WordOf(PanelEdge.Lower)}: port above, starboard below, forward to the left. Going up planks head "
            )
                + $"{PlankWords.Of(layer.Planks.Heads)}. The master plank, number {layer.MasterNumber}, is grey.{beyond}",
            Letters.Bench
        );
    }

    private static void Draw(
        SheetCanvas pad,
        Box inside,
        LayerEdges edges,
        LayerInPlan view,
        double foot
    )
    {
        ImmutableArray<StationLine> stations = edges.Stations;
        StationNames.Row(
            pad,
            stations.Select(s => (s.Name, view.Of(s.Upper, Side.Starboard).X)),
            foot - NamesMm + 1
        );
        // Both sides at once: a leader from one must not end in the other.
        (PlankNumbers.Usual with { Within = inside }).Draw(
            pad,
            [
                .. view
                    .Layer.Starboard.Concat(view.Layer.Port)
                    .Select(p => (p, (IReadOnlyList<Vec2>)view.Outline(p))),
            ]
        );
        view.DrawEdges(pad);
        pad.BreakAroundLetters(Layers.Hull, Layers.Behind);
        foreach (StationLine station in stations)
        {
            Vec2 chine = view.Of(station.Upper, Side.Starboard);
            BrokenLine.Draw(
                pad,
                view.Of(station.Upper, Side.Port),
                view.Of(station.Lower, Side.Port),
                Pens.Station
            );
            BrokenLine.Draw(
                pad,
                view.Of(station.Lower, Side.Port),
                view.Of(station.Lower, Side.Starboard),
                Pens.Station
            );
            BrokenLine.Draw(pad, view.Of(station.Lower, Side.Starboard), chine, Pens.Station);
            BrokenLine.Draw(
                pad,
                chine - new Vec2(0, 1),
                new(chine.X, foot - NamesMm + 3 + Letters.Bench),
                Pens.Station
            );
        }
    }
}
