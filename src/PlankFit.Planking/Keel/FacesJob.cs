using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;

namespace PlankFit.Planking.Keel;

/// <summary>
/// A job as far as the faces of its layers and its keel go: nothing of how planks lie in them, or of what is judged of the keel. What is worked out from it alone
/// stays as it is where planks are laid otherwise. What is left out of it is no number, so that nobody takes it for one.
/// </summary>
internal static class FacesJob
{
    /// <param name="side">The one on which the keel was measured.</param>
    public static PlankingJob Of(PlankingJob job, Side side) =>
        job with
        {
            Layers = [.. job.Layers.Select(l => l is PlankLayerSpec planks ? Bare(planks) : l)],
            Limits = new([], double.NaN, double.NaN),
            Timber = null,
            Keel = job.Keel with
            {
                HalfWidthToleranceMm = double.NaN,
                ProudToleranceMm = double.NaN,
                StockWidthMm = double.NaN,
            },
            AsBuilt = AsBuiltSpec.None with
            {
                KeelHalfWidths = [.. job.AsBuilt.KeelHalfWidths.Where(m => m.Side == side)],
            },
        };

    private static PlankLayerSpec Bare(PlankLayerSpec planks) =>
        new(
            planks.Name,
            planks.ThicknessMm,
            new(double.NaN, double.NaN),
            new(default, double.NaN, null, default, double.NaN, null)
        );
}
