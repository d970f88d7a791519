using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;

namespace PlankFit.Export.Checks;

/// <summary>What the table's letters mean: one plank between keel and chine as the side stands upside down, with the four tapes laid along it. Not to scale.</summary>
internal static class CheckSketch
{
    public const double HeightMm = 20;
    private const double RunMm = 30;
    private const double WideMm = 20;
    private const double NameMm = 24;

    public static void Draw(
        SheetCanvas pad,
        Box box,
        Side side,
        PlankLayerPlan layer,
        string station
    )
    {
        Heads heads = layer.Planks.Heads;
        string Name(PanelEdge edge) =>
            Letters.Shortened(layer.Panel.WordOf(edge), Letters.Small, NameMm);
        string lower = Name(PanelEdge.Lower),
            upper = Name(PanelEdge.Upper);
        double keel = box.Top - 5,
            chine = box.Bottom + 5,
            slant = keel - chine;
        // As the side is seen in the shop: forward to the left on starboard, to the right on port.
        int aft = side == Side.Starboard ? 1 : -1,
            lean = heads == Heads.Aft ? aft : -aft;
        double middle = box.Middle.X,
            hook = middle + (aft * RunMm);
        Vec2 forwardKeel = new(middle - (aft * WideMm / 2) - (lean * slant / 2), keel),
            afterKeel = forwardKeel + new Vec2(aft * WideMm, 0),
            forwardChine = new(forwardKeel.X + (lean * slant), chine),
            afterChine = forwardChine + new Vec2(aft * WideMm, 0);
        pad.Closed([forwardKeel, afterKeel, afterChine, forwardChine], Pens.Seam, fill: 0.9);
        pad.Line(box.Left + 14, keel, box.Right - 14, keel, Pens.HullEdge);
        pad.Line(box.Left + 14, chine, box.Right - 14, chine, Pens.HullEdge);
        pad.Text(box.Left + 12.5, keel, lower, Letters.Small, Anchor.MiddleRight);
        pad.Text(box.Left + 12.5, chine, upper, Letters.Small, Anchor.MiddleRight);
        pad.Line(new(hook, keel + 1.5), new(hook, chine - 1.5), Pens.Measure);
        pad.Text(
            hook + (aft * 1.5),
            (keel + chine) / 2,
            Letters.Shortened($"station {station}", Letters.Small, 24),
            Letters.Small,
            aft > 0 ? Anchor.MiddleLeft : Anchor.MiddleRight
        );
        Tape(pad, forwardKeel + new Vec2(0, 1.8), new(hook, keel + 1.8), "a", 1.6);
        Tape(pad, forwardChine - new Vec2(0, 1.8), new(hook, chine - 1.8), "b", -1.6);
        Vec2 ahead = new(-aft, 0);
        Vec2 c = 0.5 * (forwardKeel + forwardChine) + (2.6 * ahead);
        pad.Text(c, "c", Letters.Small, Anchor.MiddleCentre, true);
        pad.Line(forwardKeel + (0.8 * ahead), forwardChine + (0.8 * ahead), Pens.Measure);
        pad.Line(forwardKeel, afterChine, Pens.Measure);
        Vec2 d = forwardKeel + (0.5 * (afterChine - forwardKeel));
        Vec2 clear = (afterChine - forwardKeel).Unit().Left();
        clear = clear.Dot(ahead) > 0 ? clear : -1 * clear;
        pad.Text(d + (1.9 * clear), "d", Letters.Small, Anchor.MiddleCentre, true);
    }

    private static void Tape(SheetCanvas pad, Vec2 from, Vec2 to, string letter, double above)
    {
        pad.Line(from, to, Pens.Measure);
        foreach (Vec2 end in new[] { from, to })
        {
            pad.Line(end - new Vec2(0, 0.9), end + new Vec2(0, 0.9), Pens.Measure);
        }

        pad.Text(
            0.5 * (from + to) + new Vec2(0, above),
            letter,
            Letters.Small,
            Anchor.MiddleCentre,
            true
        );
    }
}
