using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Planking.Regions;

/// <summary>How lines are traced on a layer.</summary>
/// <param name="ToleranceMm">Error allowed a step.</param>
/// <param name="ReachMm">How far past the region a line is followed.</param>
internal sealed record Tracing(double ToleranceMm, double ReachMm, double PerpendicularStepMm = 40)
{
    /// <summary>No line on a bottom is longer than this, mm.</summary>
    private const double LongestMm = 60000;

    public Geodesic Line(LayerRegion region, Uv start, Vec3 direction) =>
        GeodesicTracing.Trace(
            region.Surface,
            start,
            direction,
            LongestMm,
            LongestMm,
            ToleranceMm,
            uv => region.Room(uv) > -ReachMm
        );
}
