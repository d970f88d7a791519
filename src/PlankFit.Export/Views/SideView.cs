using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Views;

/// <summary>
/// One side of a layer as it stands upside down in the shop, seen by one who stands outboard facing it: keel on top, chine below. With the hull upside down,
/// forward lies to the left of one who faces the starboard side, and to the right of one who faces the port side (right = look × up, up being the hull's down).
/// Drawn square to the bottom's mean slope, so that planks are hardly foreshortened, and cut into strips where that makes it larger.
/// </summary>
internal static class SideView
{
    private const double HeadMm = 15;
    private const int MostStrips = 3;

    public static SheetPage Page(BottomPlan plan, PlankLayerPlan layer, Side side)
    {
        var format = SheetFormat.Wall(plan.Job);
        Box inside = Frame.Inside(format).Within(8);
        int turn = side == Side.Starboard ? 1 : -1;
        Vec3 slope = layer.Panel.HasKeel ? MeanSlope(layer) : PanelSight.RiseOf(plan);
        string onTop = $"{layer.Panel.WordOf(PanelEdge.Lower)} on top";
        Vec2 Seen(Vec3 p) => new(turn * p.X, -((slope.Y * Math.Abs(p.Y)) + (slope.Z * p.Z)));
        List<SeenPlank> planks = [.. layer.On(side).Select(p => SeenPlank.Of(p, Seen))];
        Box room = inside with { Top = inside.Top - HeadMm };
        (SideStrip[] strips, Ratio ratio) = Enumerable
            .Range(1, MostStrips)
            .Select(n => SideStrip.Fitting(planks, n, room, plan.Job.Units))
            .MinBy(s => s.Ratio.Of);
        var forward = new Vec2(-turn, 0);
        var block = new TitleBlock(
            "The side as it stands upside down",
            $"{SheetWords.Of(side, layer)}; {onTop}, seen from outboard",
            "scale " + ratio,
            forward,
            Cautions.CheckBy(layer.Panel)
        );
        return new(
            format,
            block,
            (pad, _) =>
            {
                Heading(pad, inside, layer, side, onTop);
                (string, Vec2)[] stations =
                [
                    .. LayerEdges.Of(plan, layer).Stations.Select(s => (s.Name, Seen(s.Lower))),
                ];
                for (int i = 0; i < strips.Length; i++)
                {
                    strips[i].Draw(pad, room.Row(i, strips.Length), ratio, stations, forward);
                }
            }
        );
    }

    private static void Heading(
        SheetCanvas pad,
        Box inside,
        PlankLayerPlan layer,
        Side side,
        string onTop
    )
    {
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
            $"You stand outboard and face the {PlankWords.Of(side)} side; the hull is upside down, {onTop}; forward is to your {(side == Side.Starboard ? "left" : "right")}. "
                + $"The master plank, number {layer.MasterNumber}, is grey. Tape this to the hull.",
            Letters.Bench
        );
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
