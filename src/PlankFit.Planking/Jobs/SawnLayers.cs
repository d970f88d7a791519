using System.Collections.Immutable;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Jobs;

/// <summary>Sawn planks go with their layer: where layers were put in or taken out below it, it has another number, and so have they.</summary>
public static class SawnLayers
{
    /// <param name="names">Of the job's layers of planks, from the inside out.</param>
    /// <returns>The planks by the numbers that their layers now have, and a finding for each layer whose number is another.</returns>
    public static (ImmutableArray<SawnPlank> Planks, ImmutableArray<Finding> Findings) Numbered(
        ImmutableArray<SawnPlank> planks,
        ImmutableArray<string> names,
        string file
    )
    {
        int Now(SawnPlank p) =>
            p.SawnFor is { } layer && names.IndexOf(layer.Name) is >= 0 and int at
                ? at + 1
                : p.Layer;
        ImmutableArray<SawnPlank> now =
        [
            .. planks.Select(p => p with { Id = p.Id with { Layer = Now(p) } }),
        ];
        if (now.GroupBy(p => p.Id).FirstOrDefault(g => g.Count() > 1) is { } twice)
        {
            return (
                [],
                [
                    new(
                        Severity.Error,
                        file,
                        $"two planks would be {twice.Key}, since layers of the job were put in or taken out after planks were sawn: give the layers the names that they had ({string.Join(", ", planks.Select(p => p.SawnFor?.Name).OfType<string>().Distinct())})"
                    ),
                ]
            );
        }

        return (
            now,
            [
                .. planks
                    .Zip(now)
                    .Where(p => p.First.Layer != p.Second.Layer)
                    .GroupBy(p => (p.First.Layer, Now: p.Second.Layer))
                    .Select(g => new Finding(
                        Severity.Warning,
                        file,
                        $"layer {g.First().First.SawnFor!.Name} was number {g.Key.Layer} when planks of it were sawn, and is number {g.Key.Now} now: {string.Join(", ", g.Select(p => $"{p.First.Id} is {p.Second.Id}"))}; write the new numbers on them"
                    )),
            ]
        );
    }
}
