using System.Collections.Immutable;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Glue;

/// <summary>What of the work the progress does not have.</summary>
internal static class StillToLay
{
    /// <summary>What is still to be laid from that layer on: layers, coats over the outermost cloth, fairing and fillets.</summary>
    public static ImmutableArray<string> From(AmountPlanner amounts, int from)
    {
        GlueSpec spec = amounts.Spec;
        int last = amounts.Planked.Layers.Length - 1;
        return
        [
            .. amounts
                .Planked.Job.Layers.Select((l, i) => (l.Name, At: i))
                .Where(l => l.At >= from && !IsDone(amounts, l.At))
                .Select(l => l.Name),
            .. amounts.Planked.Layers[last] is ClothLayerPlan { Cloth.Name: var cloth }
            && spec is { Resin: not null, WeaveGsm: not null }
                ? Enumerable
                    .Range(1, spec.WeaveCoats)
                    .Where(coat =>
                        AmountPlanner.BothSides.Any(s => spec.Done.CoatedAt(cloth, coat, s) is null)
                    )
                    .Select(coat => WeaveStages.Name(cloth, coat, spec.WeaveCoats))
                : [],
            .. spec.Finishes.Where(f =>
                AmountPlanner.BothSides.Any(s => spec.Done.FinishedAt(f, s) is null)
            ),
        ];
    }

    /// <summary>Nothing of it is mixed for any more. Of a cloth that is laid by hand nothing ever is.</summary>
    public static bool IsDone(AmountPlanner amounts, int at)
    {
        GlueProgress done = amounts.Spec.Done;
        return amounts.Planked.Layers[at] is PlankLayerPlan skin
            ? AmountPlanner.BothSides.All(s =>
                skin.On(s).All(p => p.IsFitted || done.DownAt(p.Id) is not null)
            )
            : amounts.Planked.Layers[at].Spec.Name is var cloth
                && (
                    amounts.ClothOf(cloth) is null
                    || AmountPlanner.BothSides.All(s => done.WettedAt(cloth, s) is not null)
                );
    }
}
