using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Views;

/// <summary>
/// Both sides of a panel in one view from outside, forward to the left, port above and starboard below. A bottom is seen in plan. Another panel is opened out to either
/// side from its lower edge, looked at square to its mean slope, so that its planks are hardly foreshortened.
/// </summary>
internal sealed class PanelSight
{
    /// <summary>Between the lower edges of the two sides, a part of the panel's height.</summary>
    private const double GapPart = 0.12;

    private readonly Vec3? rise;
    private readonly double gap;

    private PanelSight(Vec3? rise, double gap) => (this.rise, this.gap) = (rise, gap);

    public static PanelSight Of(BottomPlan plan, PlankLayerPlan layer)
    {
        if (layer.Panel.HasKeel)
        {
            return new(null, 0);
        }

        Vec3 rise = RiseOf(plan);
        double[] up = [.. layer.Outline.Select(p => rise.Dot(p))];
        return new(rise, (GapPart * (up.Max() - up.Min()) / 2) - up.Min());
    }

    /// <summary>Unit direction from lower edge to upper, athwartships, the mean over the stations; starboard.</summary>
    public static Vec3 RiseOf(BottomPlan plan)
    {
        LoftedSurface surface = plan.Hull.Surface;
        Vec3 sum = Vec3.Zero;
        foreach (StationOnHull station in plan.Hull.Stations)
        {
            sum += surface.At(station.U, surface.UpperV(station.U)).P - surface.At(station.U, 0).P;
        }

        return new Vec3(0, sum.Y, sum.Z).Unit();
    }

    /// <summary>A point of a side on the sheet, mm of hull.</summary>
    public Vec2 At(Vec3 p, Side side)
    {
        if (rise is not { } up)
        {
            return new(p.X, -p.Y);
        }

        bool port = side == Side.Port;
        double out_ = gap + (up.Y * (port ? -p.Y : p.Y)) + (up.Z * p.Z);
        return new(p.X, port ? out_ : -out_);
    }

    /// <summary>A starboard point on either side.</summary>
    public Vec2 Of(Vec3 starboard, Side side) =>
        At(side == Side.Port ? starboard.MirroredInY() : starboard, side);
}
