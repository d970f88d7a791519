using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Keel;

/// <summary>Which side of the keel the planks of a layer meet.</summary>
internal static class KeelSides
{
    /// <summary>The table's own keel line, where the job names no keel layers.</summary>
    public static KeelSideFace OfTable(PlankingJob job, HullSurface hull) =>
        job.Hull.KeelSide == KeelSide.Plumb
            ? KeelSideFace.Plumb(hull.Surface)
            : KeelSideFace.SquareAtKeelLine;
}
