using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Laying;

namespace PlankFit.Planking.Whole;

/// <summary>A faulty job as far as its planks can be laid all the same: the layers within the first that has a fault, in the whole stack.</summary>
internal static class SoundLayers
{
    /// <summary>Null where no layer can be laid.</summary>
    /// <param name="faults">What <see cref="JobChecks"/> found.</param>
    public static PlankingJob? Of(PlankingJob asked, ImmutableArray<Finding> faults)
    {
        PlankingJob job = SawnHeads.Kept(asked).Job;
        string[] faulty = [.. faults.Select(f => f.About.Layer).OfType<string>()];
        string[] sound =
        [
            .. job
                .Layers.TakeWhile(l => !faulty.Contains(l.Name))
                .OfType<PlankLayerSpec>()
                .Select(l => l.Name),
        ];

        // What is wrong with hull and keel stands in the way of every layer.
        if (sound.Length == 0 || !PlankingChecks.GroundIsSound(job))
        {
            return null;
        }

        return job with
        {
            // What stays of the others is their thickness.
            Layers =
            [
                .. job.Layers.Select(l =>
                    l is PlankLayerSpec && !sound.Contains(l.Name)
                        ? new ClothLayerSpec(l.Name, l.ThicknessMm)
                        : l
                ),
            ],
            Keel = job.Keel with
            {
                Layers = [.. job.Keel.Layers.Where(k => sound.Contains(k.Meets))],
            },
            // What is measured and sawn comes after what is drawn, which is looked at here.
            AsBuilt = AsBuiltSpec.None,
        };
    }
}
