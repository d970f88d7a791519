using PlankFit.Export.Framing;
using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Views;

/// <summary>
/// The shell expanded, starboard, with the girth at every station laid out straight from the keel's edge; below it the girths at which each seam crosses
/// each station, to set the seams off on the frames.
/// </summary>
public static class ShellExpansion
{
    private const double NoteMm = 11;
    private const double NamesMm = 7;
    private const double GirthsMm = 17;

    public static Drawing Of(BottomPlan plan, PlankLayerPlan layer)
    {
        var format = SheetFormat.Wall(plan.Job);
        Box inside = Frame.Inside(format).Within(8);
        var edges = LayerEdges.Of(plan, layer);
        var expanded = ExpandedLayer.Of(edges, layer);
        var whole = Box.Around(expanded.Planks.SelectMany(p => p.Outline));
        var ratio = Ratio.Fitting(
            whole,
            inside.Width - 16,
            (0.6 * inside.Height) - NoteMm - NamesMm - GirthsMm,
            plan.Job.Units
        );
        double height = ratio.Factor * whole.Height,
            left = inside.Height - NoteMm - NamesMm - height - GirthsMm;
        var table = SeamGirths.Fitting(expanded, plan.Job.Units, inside.Width, left);
        // What room is left over goes above the drawing, above the table and below it alike.
        double space = Math.Max(0, left - (table?.HeightMm ?? 0)) / 3,
            top = inside.Top - NoteMm - NamesMm - space;
        // Seen from outside with the keel on top, as the hull lies upside down: outboard runs down the sheet.
        var at = Placing.Centred(
            whole,
            new Box(inside.Left, top - height, inside.Right, top),
            ratio.Factor,
            -ratio.Factor
        );
        Vec2 OnPaper(Plank plank, Vec2 flat) => at[expanded.Of(plank.Map.Point(flat))];
        return OverviewSheet.Of(
            plan.Job,
            (
                "Shell expansion",
                $"starboard, {SheetWords.Of(layer)}, outer face up; port is its mirror image"
            ),
            ratio,
            Cautions.Overview,
            pad =>
            {
                pad.Paragraph(
                    inside.Left,
                    inside.Top,
                    inside.Width,
                    $"Each station's girth is laid out straight from the layer's edge at the {layer.Panel.WordOf(PanelEdge.Lower)}; along the hull the stations stand as in plan, so that lengths "
                        + "of planks are not true here. Girths are on this layer's middle surface, half its thickness outside the face that it is laid on."
                        + edges.Beyond(plan)
                        + BehindOnViews.Said(plan),
                    Letters.Bench
                );
                BehindOnViews.Shade(pad, plan, layer.Starboard, OnPaper);
                Draw(pad, inside, expanded, at, plan.Job.Units);
                table?.Draw(pad, inside.Left, top - height - GirthsMm - space);
                BehindOnViews.Draw(pad, plan, layer.Starboard, OnPaper, inside);
            }
        );
    }

    private static void Draw(
        SheetCanvas pad,
        Box inside,
        ExpandedLayer expanded,
        Placing at,
        LengthUnit unit
    )
    {
        // Numbers on leaders find their way round the girths and the stations that stand there already.
        Girths(pad, expanded, at, unit);
        StationNames.Row(
            pad,
            expanded.Stations.Select(s => (s.Name, at[s.Lower].X)),
            at[default(Vec2)].Y + 3
        );
        (PlankNumbers.Usual with { Within = inside }).Draw(
            pad,
            [.. expanded.Planks.Select(p => (p.Plank, (IReadOnlyList<Vec2>)at.Of(p.Outline)))],
            new Box(
                double.NegativeInfinity,
                at[default(Vec2)].Y + 2,
                double.PositiveInfinity,
                at[default(Vec2)].Y + 8
            )
        );
        pad.Open(at.Of(expanded.LowerEdge), Pens.HullEdge, Layers.Hull);
        pad.Open(at.Of(expanded.UpperEdge), Pens.HullEdge, Layers.Hull);
        pad.BreakAroundLetters(Layers.Hull);
        foreach (ExpandedStation station in expanded.Stations)
        {
            BrokenLine.Draw(pad, at[station.Lower], at[station.Upper], Pens.Station);
        }
    }

    private static void Girths(SheetCanvas pad, ExpandedLayer expanded, Placing at, LengthUnit unit)
    {
        double taken = double.NegativeInfinity;
        foreach (ExpandedStation station in expanded.Stations)
        {
            Vec2 upper = at[station.Upper];
            if (upper.X - taken > 2 * Letters.Bench)
            {
                pad.Text(
                    upper - new Vec2(0, 2),
                    LengthText.PaperNumber(station.GirthMm, unit),
                    Letters.Small,
                    Anchor.MiddleRight,
                    turn: 90
                );
                taken = upper.X;
            }
        }
    }
}
