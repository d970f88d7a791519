using PlankFit.Export.Framing;
using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Views;

/// <summary>
/// One layer of a panel on the wall's paper, both sides, seen from outside, forward to the left: what the plan, the maps of joints and of strain and the fastening plans have in common.
/// What lies behind is grey: stringers, frames and floors as they cross the planks, and the seams of the layer below.
/// </summary>
internal sealed record LayerInPlan(
    BottomPlan Plan,
    PlankLayerPlan Layer,
    PanelSight Sight,
    Box Hull,
    Ratio Ratio,
    Placing At
)
{
    /// <summary>Light enough that a seam and a figure on it are read first.</summary>
    private const double TimberGrey = 0.88;
    private const double ThinMm = 0.02;

    /// <summary>A seam of the layer below, which is not to be taken for one of this.</summary>
    public static readonly Pen SeamBelow = new(0.18, 0.72);

    /// <summary>As said of it on every sheet that has it.</summary>
    public string Said =>
        (Plan.Job.Framing.IsEmpty ? "" : " Light grey: timber behind.")
        + (Below is null ? "" : " Thin grey lines: seams of the layer below.");

    private PlankLayerPlan? Below => Plan.PlankLayers.LastOrDefault(l => l.Number < Layer.Number);

    private IEnumerable<Plank> Planks => Layer.Starboard.Concat(Layer.Port);

    private static IEnumerable<Plank> Of(PlankLayerPlan layer, Side? only) =>
        layer.Starboard.Concat(layer.Port).Where(p => only is null || p.Side == only);

    /// <summary>As large as there is room for, in its middle.</summary>
    public static LayerInPlan Of(BottomPlan plan, PlankLayerPlan layer, Box room)
    {
        var sight = PanelSight.Of(plan, layer);
        var hull = Box.Around(
            layer
                .Outline.Select(p => sight.Of(p, Side.Starboard))
                .Concat(layer.Of(Side.Port).Outline.Select(p => sight.Of(p, Side.Port)))
        );
        var ratio = Ratio.Fitting(hull, room.Width, room.Height, plan.Job.Units);
        return new LayerInPlan(plan, layer, sight, hull, ratio, default).In(room);
    }

    /// <summary>The same to the same scale in the middle of another room.</summary>
    public LayerInPlan In(Box room) =>
        this with
        {
            At = Placing.Centred(Hull, room, Ratio.Factor, Ratio.Factor),
        };

    /// <summary>A point of a side on the paper.</summary>
    public Vec2 On(Vec3 p, Side side) => At[Sight.At(p, side)];

    /// <summary>A place of a plank, flat.</summary>
    public Vec2 On(Plank plank, Vec2 flat) => On(plank.Map.Point(flat), plank.Side);

    /// <summary>A starboard point on either side.</summary>
    public Vec2 Of(Vec3 starboard, Side side) => At[Sight.Of(starboard, side)];

    public Vec2[] Outline(Plank plank) => [.. plank.OnHull.Outline.Select(p => On(p, plank.Side))];

    /// <summary>Drawn before all else.</summary>
    /// <param name="only">The side that has it, where the other's grey says something else; null for both.</param>
    public void DrawBehind(SheetCanvas pad, Side? only = null)
    {
        foreach (Plank plank in Of(Layer, only))
        {
            foreach (FramingCrossing timber in FramingWords.Crossings(Plan, plank))
            {
                if (timber.Of.Kind != FramingKind.Open && timber.Cover.Length > 2)
                {
                    pad.Closed(
                        Thinning.Closed(timber.Cover, 1).Select(p => On(plank, p)),
                        Pens.None,
                        Layers.Behind,
                        TimberGrey
                    );
                }
            }
        }

        foreach (Plank plank in Below is { } below ? Of(below, only) : [])
        {
            if (plank.OnHull.AfterEdge is { Exists: true, Seam.Length: > 1 } edge)
            {
                pad.Open(
                    Thinning.Open([.. edge.Seam.Select(p => On(p, plank.Side))], ThinMm),
                    SeamBelow,
                    Layers.Behind
                );
            }
        }
    }

    public void DrawPlanks(SheetCanvas pad, Pen pen)
    {
        foreach (Plank plank in Planks)
        {
            pad.Closed(Thinning.Closed(Outline(plank), ThinMm), pen, Layers.Hull);
        }
    }

    /// <summary>Of the whole layer, both sides.</summary>
    public void DrawEdges(SheetCanvas pad)
    {
        foreach (Side side in new[] { Side.Starboard, Side.Port })
        {
            pad.Closed(Layer.Of(side).Outline.Select(p => Of(p, side)), Pens.HullEdge, Layers.Hull);
        }
    }
}
