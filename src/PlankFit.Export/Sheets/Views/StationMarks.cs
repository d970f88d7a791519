using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>The stations of the bottom named along the keel of a view, where they do not crowd.</summary>
internal static class StationMarks
{
    /// <summary>A tick at each station across the middle line, and its name.</summary>
    public static void Draw(
        Pad pad,
        BottomPlan plan,
        PlankLayerPlan layer,
        Placing at,
        Func<Vec3, Vec2> seen,
        Box inside
    )
    {
        foreach (
            StationOnHull station in plan.Hull.Stations.OrderBy(s =>
                at[seen(KeelPoint(layer, s))].X
            )
        )
        {
            Vec2 keel = at[seen(KeelPoint(layer, station))],
                middle = at[seen(KeelPoint(layer, station) with { Y = 0 })];
            pad.Line(middle, keel, Pens.Tick);
            pad.Line(middle, middle + (middle - keel), Pens.Tick);
        }

        double foot = inside.Bottom - 6;
        double last = double.NegativeInfinity;
        foreach (
            StationOnHull station in plan.Hull.Stations.OrderBy(s =>
                at[seen(KeelPoint(layer, s))].X
            )
        )
        {
            double x = at[seen(KeelPoint(layer, station))].X;
            if (x - last > Letters.Width(station.Name, Letters.Bench) + 2)
            {
                pad.Line(x, foot + 4, x, foot + 7, Pens.Measure);
                pad.Text(x, foot, station.Name, Letters.Bench, Anchor.BaselineCentre);
                last = x;
            }
        }

        pad.Text(inside.Left - 8, foot, "stations", Letters.Small, Anchor.BaselineLeft);
    }

    private static Vec3 KeelPoint(PlankLayerPlan layer, StationOnHull station) =>
        layer.Surface.At(station.U, 0).P;
}
