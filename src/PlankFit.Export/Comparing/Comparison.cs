using System.Collections.Immutable;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Comparing;

/// <summary>Lay-outs side by side, and which of them nothing beats.</summary>
/// <param name="job">That they are lay-outs of; its revision and units stand on every sheet.</param>
/// <param name="layouts">By number; of a search that was stopped those that were laid by then.</param>
/// <param name="asked">How many there were to lay.</param>
/// <param name="by">What they are held against each other by.</param>
public sealed class Comparison(
    Job job,
    ImmutableArray<Layout> layouts,
    int asked,
    ImmutableArray<Measure> by
)
{
    public Job Job => job;

    public ImmutableArray<Layout> Layouts => layouts;

    public int Asked => asked;

    public ImmutableArray<Measure> By => by;

    /// <summary>What stands along the chart and up it.</summary>
    public (Measure Along, Measure Up) Axes { get; init; } = (Measure.Planks, Measure.Waste);

    public IEnumerable<Layout> Laid => Layouts.Where(l => l.Figures is not null);

    public IEnumerable<Layout> NotLaid => Layouts.Where(l => l.Figures is null);

    public bool IsStopped => Layouts.Length < Asked;

    /// <summary>The numbers of the lay-outs that nothing beats. Planks that are refused or have no board, and findings that stand before any sawing, count whatever they are held by.</summary>
    public ImmutableHashSet<int> Unbeaten => field ??= Best([.. Laid], [.. Measure.Always, .. By]);

    /// <summary>The same lay-outs held against each other by something else, or charted otherwise: nothing is laid for it.</summary>
    /// <param name="held">None for what they are held by now.</param>
    public Comparison Seen(ImmutableArray<Measure> held, (Measure Along, Measure Up)? axes) =>
        new(job, layouts, asked, held.IsEmpty ? by : held) { Axes = axes ?? Axes };

    private static ImmutableHashSet<int> Best(Layout[] laid, ImmutableArray<Measure> by) =>
        [
            .. Planking
                .Comparing.Unbeaten.Of([
                    .. laid.Select(l => by.Select(m => m.InSteps(l.Figures!)).ToImmutableArray()),
                ])
                .Select(i => laid[i].Number),
        ];
}
