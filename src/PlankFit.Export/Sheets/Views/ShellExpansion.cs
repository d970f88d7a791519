using MathNet.Numerics.Integration;
using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>
/// The shell expanded, starboard: at every place along the hull the girth from the keel line is laid out straight, square to the middle line. Seams keep their
/// distance from the keel along the sections; along the hull they are as in plan, so lengths are not true. Girths are those of the layer's own surface.
/// </summary>
public static class ShellExpansion
{
    private const int MostPointsAPlank = 60;

    public static Drawing Of(BottomPlan plan, PlankLayerPlan layer)
    {
        SheetFormat format = SheetFormat.Wall(plan.Job);
        Box inside = Frame.Inside(format).Within(14);
        var expanded = layer
            .Starboard.Select(p => (Plank: p, Points: Expanded(plan, layer, p)))
            .ToList();
        Box whole = Box.Around(
            expanded.SelectMany(e => e.Points).Append(new Vec2(expanded[0].Points[0].X, 0))
        );
        Ratio ratio = Ratio.Fitting(whole, inside.Width, inside.Height - 24, plan.Job.Units);
        var block = new TitleBlock(
            "Shell expansion",
            $"starboard, {SheetWords.Of(layer)}, outer face up; port is its mirror image",
            "scale " + ratio,
            new Vec2(-1, 0),
            Cautions.Overview
        );

        // Seen from outside with the keel on top, as the hull lies upside down: outboard runs down the sheet.
        Placing at = Placing.Centred(whole, inside, ratio.Factor, -ratio.Factor);
        return SheetPage.Numbered(
            plan.Job,
            [new(format, block, (pad, _) => Draw(pad, plan, layer, expanded, whole, at))]
        )[0];
    }

    /// <summary>A point of the layer expanded: x of the keel line abreast, and girth from it, mm.</summary>
    public static Vec2 Expand(PlankLayerPlan layer, Uv p) =>
        new(layer.Surface.At(p.U, 0).P.X, Girth(layer.Surface, p.U, p.V));

    private static double Girth(ISurface surface, double u, double v) =>
        GaussLegendreRule.Integrate(t => surface.At(u, t).Dv.Norm, 0, v, 8);

    private static List<Vec2> Expanded(BottomPlan plan, PlankLayerPlan layer, Plank plank)
    {
        int step = Math.Max(1, plank.Outline.Length / MostPointsAPlank);
        StationOnHull near = plan.Hull.Stations.MinBy(s =>
            Math.Abs(s.PositionMm - plank.Outline[0].X)
        )!;
        var uv = new Uv(
            near.U,
            plan.Hull.Surface.ChineV(Math.Max(near.U, plan.Hull.Surface.UFrom + 50)) / 2
        );
        var points = new List<Vec2>();
        for (int i = 0; i < plank.Outline.Length; i += step)
        {
            if (
                ClosestPoint.TryFind(
                    layer.Surface,
                    plank.Outline[i],
                    uv,
                    1e-4,
                    out ClosestPoint.Result foot
                )
            )
            {
                uv = foot.Uv;
                points.Add(Expand(layer, uv));
            }
        }

        return points;
    }

    private static void Draw(
        Pad pad,
        BottomPlan plan,
        PlankLayerPlan layer,
        List<(Plank Plank, List<Vec2> Points)> expanded,
        Box whole,
        Placing at
    )
    {
        pad.Line(at[new(whole.Left, 0)], at[new(whole.Right, 0)], Pens.HullEdge, Layers.Hull);
        PlankNumbers.Draw(
            pad,
            [.. expanded.Select(e => (e.Plank, (IReadOnlyList<Vec2>)at.Of(e.Points)))]
        );
        Edge(pad, plan, layer, at, u => 0);
        Edge(pad, plan, layer, at, plan.Hull.Surface.ChineV);
        double last = double.NegativeInfinity,
            head = at[new(0, 0)].Y + 5;
        foreach (StationOnHull station in plan.Hull.Stations)
        {
            Vec2 keel = at[Expand(layer, new(station.U, 0))],
                chine = at[Expand(layer, new(station.U, plan.Hull.Surface.ChineV(station.U)))];
            pad.Line(keel, chine, Pens.Station, Layers.Hull);
            if (keel.X - last > Letters.Width(station.Name, Letters.Bench) + 2)
            {
                pad.Text(keel.X, head, station.Name, Letters.Bench, Anchor.BaselineCentre);
                last = keel.X;
            }

            double girth = Expand(layer, new(station.U, plan.Hull.Surface.ChineV(station.U))).Y;
            Girths(pad, chine, girth, plan.Job.Units);
        }

        pad.Text(
            at[new(whole.Left, 0)].X,
            head + 6,
            "Stations at the keel; below each its girth from the keel line to the chine on this layer's middle surface.",
            Letters.Small
        );
    }

    private static void Girths(Pad pad, Vec2 chine, double girth, LengthUnit unit) =>
        pad.Text(
            chine + new Vec2(0.9, -3),
            LengthText.PaperNumber(girth, unit),
            Letters.Small,
            Anchor.MiddleRight,
            turn: 90
        );

    private static void Edge(
        Pad pad,
        BottomPlan plan,
        PlankLayerPlan layer,
        Placing at,
        Func<double, double> v
    )
    {
        LoftedSurface hull = plan.Hull.Surface;
        pad.Open(
            Enumerable
                .Range(0, 81)
                .Select(i => hull.UFrom + ((hull.UTo - hull.UFrom) * i / 80))
                .Select(u => at[Expand(layer, new(u, v(u)))]),
            Pens.HullEdge,
            Layers.Hull
        );
    }
}
