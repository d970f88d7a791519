using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Keel;

/// <summary>Which side of the keel the planks of a layer meet.</summary>
internal static class KeelSides
{
    /// <summary>The table's own line, where the job names no keel layers; of a panel without a keel the planks' edge is square on it.</summary>
    public static KeelSideFace OfTable(PlankingJob job, HullSurface hull) =>
        job.Hull.Panel.HasKeel && job.Hull.KeelSide == KeelSide.Plumb
            ? KeelSideFace.Plumb(hull.Surface)
            : KeelSideFace.SquareAtKeelLine;
}
