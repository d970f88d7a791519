using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;

namespace PlankFit.Planking.Laying;

/// <summary>
/// A job as far as one layer's planks go: the rules of ends and of bending, the wood that its planks bend as, what is measured and sawn of it. Nothing else of the job
/// reaches the layer but its place in the stack and the keel.
/// </summary>
internal static class LayerJob
{
    public static PlankingJob Of(
        PlankingJob job,
        PlankLayerSpec layer,
        int number,
        Side side,
        AsBuiltSpec standing
    )
    {
        ImmutableArray<MeasuredSeam> seams =
        [
            .. standing.Seams.Where(m => m.Side == side && m.PlankId.Layer == number),
        ];
        return new(default, new([], []), job.Hull, [layer], job.Ends, job.Limits)
        {
            Timber = job.Timber is { } timber ? AsItBends(timber, layer) : null,
            AsBuilt = new()
            {
                From = seams.IsEmpty ? null : standing.From,
                Seams = seams,
                Fitted = [.. standing.Fitted.Where(p => p.Side == side && p.Layer == number)],
                Sawn = [.. standing.Sawn.Where(c => c.Side == side && c.Layer == number)],
            },
        };
    }

    /// <summary>How moist it is and how it moves is nothing to a bend.</summary>
    private static TimberSpec AsItBends(TimberSpec timber, PlankLayerSpec layer) =>
        new(timber.Of(layer) is { } own ? [own] : [])
        {
            Species = timber.Species,
            Grade = timber.Grade,
            FaceGrain = timber.FaceGrain,
        };
}
