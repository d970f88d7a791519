using System.Collections.Immutable;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Glue;

/// <summary>What is mixed and not put on, since less cannot be measured.</summary>
internal static class LeftOvers
{
    /// <summary>A line a stage of what small batches leave over, which has to be ordered as well.</summary>
    public static IEnumerable<AmountLine> Of(
        ImmutableArray<GlueStage> stages,
        GlueSpec spec,
        LengthUnit unit
    )
    {
        // What rounding leaves of a plank's share is none.
        const double leastGrams = 0.05;
        foreach (GlueStage stage in stages)
        {
            GlueBatch[] small = [.. stage.Batches.Where(b => b.LeftGrams > leastGrams)];
            if (small.Length > 0)
            {
                var left = Estimate.Exactly(small.Sum(b => b.LeftGrams) / 1000);
                yield return new(
                    stage.Layer,
                    GlueUse.LeftOver,
                    stage.Mix,
                    0,
                    left,
                    $"no less than {AmountText.Grams(spec.Crew!.LeastGrams, unit)} is mixed at once: of {(small.Length == 1 ? "one small batch" : NumberText.Trimmed(small.Length, 0) + " small batches")}"
                )
                {
                    // A batch is thickened whole, what is left over of it as well.
                    Fillers =
                    [
                        .. spec.FillersOf(stage.Use).Select(f => new FillerAmount(f, f.To(left))),
                    ],
                };
            }
        }
    }
}
