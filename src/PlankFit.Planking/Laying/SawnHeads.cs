using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Laying;

/// <summary>Layers in which planks are sawn go on heading as those do, whatever the job says since: planks of two diagonals make no layer.</summary>
internal static class SawnHeads
{
    /// <summary>The job with such layers turned back, without the sawn planks that head across the most of their layer, and what is to be said of both.</summary>
    public static (PlankingJob Job, ImmutableArray<Finding> Findings) Kept(PlankingJob job)
    {
        ImmutableArray<Finding>.Builder findings = ImmutableArray.CreateBuilder<Finding>();
        ImmutableArray<LayerSpec>.Builder layers = ImmutableArray.CreateBuilder<LayerSpec>();
        HashSet<PlankId> across = [];
        int number = 0;
        foreach (LayerSpec spec in job.Layers)
        {
            if (spec is not PlankLayerSpec planks)
            {
                layers.Add(spec);
                continue;
            }

            number++;
            SawnPlank[] sawn =
            [
                .. job.AsBuilt.Sawn.Where(c => c.Layer == number && c.SawnFor is not null),
            ];
            int turned = sawn.Count(c => c.SawnFor!.Heads != planks.Heads);
            Heads kept = turned * 2 > sawn.Length ? Other(planks.Heads) : planks.Heads;
            layers.Add(planks with { Heads = kept });
            if (kept != planks.Heads)
            {
                findings.Add(
                    new(
                        Severity.Warning,
                        $"layer {planks.Name}",
                        $"the job has it head {Word(planks.Heads)}, and {NumberText.Count(turned, "plank")} of it {(turned == 1 ? "is" : "are")} sawn heading {Word(kept)}: it is laid on heading {Word(kept)}, as {(turned == 1 ? "it does" : "they do")}; to turn it, take {(turned == 1 ? "it" : "them")} off the record with --forget"
                    )
                );
            }

            foreach (SawnPlank plank in sawn.Where(c => c.SawnFor!.Heads != kept))
            {
                across.Add(plank.Id);
                findings.Add(
                    new(
                        Severity.Warning,
                        plank.Id,
                        $"it is sawn heading {Word(plank.SawnFor!.Heads)}, across the other planks of its layer: nothing is laid on from it; put it aside, and take it off the record (`plankfit sawn JOB {plank.Id} --forget`)"
                    )
                    {
                        Rank = Rank.DoNotSaw,
                    }
                );
            }
        }

        return (
            job with
            {
                Layers = layers.ToImmutable(),
                AsBuilt = job.AsBuilt with
                {
                    Sawn = [.. job.AsBuilt.Sawn.Where(c => !across.Contains(c.Id))],
                },
            },
            findings.ToImmutable()
        );
    }

    private static Heads Other(Heads heads) => heads == Heads.Aft ? Heads.Forward : Heads.Aft;

    private static string Word(Heads heads) => heads == Heads.Aft ? "aft" : "forward";
}
