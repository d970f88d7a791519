using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Joints;

/// <summary>A layer and side with its joints chosen, or with what stands in their way.</summary>
/// <param name="LeastPieces">Proved, of all planks: on the places tried there is no way with fewer, whatever joints the layer below had.</param>
internal sealed record SettledLayer(
    LayerCase Case,
    ImmutableArray<JointRule> Rules,
    SchemeChoice Choice,
    int LeastPieces,
    Relief? Relief
)
{
    /// <summary>Of the program's own proposals those that could not be kept whole; null where all could.</summary>
    public Relief? GaveWay { get; private init; }

    public static SettledLayer Of(
        LayerCase layer,
        ImmutableArray<JointRule> rules,
        CancellationToken stop
    )
    {
        var chosen = LayerChoice.Of(layer, rules, FewestJoints.UsualEffort, stop);
        return new(
            layer,
            rules,
            chosen.Choice,
            Free(layer, rules, chosen, stop).LeastPieces,
            chosen.Choice.Found ? null : RelaxedRules.Of(layer, rules, stop)
        );
    }

    /// <summary>Whether another choice in the layer below could do some good.</summary>
    public bool IsHinderedByBelow =>
        Choice.Pieces > LeastPieces
        || (!Choice.Found && Relief is { Relaxed: [{ What: JointRuleKind.JointsBelow }] });

    public JointedLayer? Pieced =>
        Choice.Found ? LayerJoints.Of(Case, Rules, Choice, LeastPieces) : null;

    /// <summary>Where only proposals of the program's own stand in the way, the same with as much of them as can be kept; else as it is.</summary>
    public SettledLayer GivingWay(CancellationToken stop)
    {
        if (
            Choice.Found
            || Relief is not { Relaxed: [_, ..] } relief
            || relief.Relaxed.Any(r => !r.GivesWay)
        )
        {
            return this;
        }

        ImmutableArray<JointRule> left =
        [
            .. Rules
                .Except(relief.Relaxed)
                .Concat(
                    relief
                        .Kept.OfType<JointRule>()
                        .Select(r =>
                            r with
                            {
                                Source = $"{r.Source}; the most of it that can be kept here",
                                IsWhatIsKept = true,
                            }
                        )
                )
                .OrderBy(r => r.What),
        ];
        SettledLayer settled = Of(Case, left, stop);
        return settled.Choice.Found ? settled with { GaveWay = relief } : this;
    }

    /// <summary>The same to port, where port is starboard's mirror image.</summary>
    public SettledLayer Mirrored()
    {
        if (!Choice.Found)
        {
            return this;
        }

        (LayerCase port, SchemeChoice choice) = PortJoints.Of(Case, Choice);
        return this with { Case = port, Choice = choice };
    }

    public IEnumerable<Finding> Findings(LengthUnit units) =>
        JointFindings
            .Of(Case, Rules, Choice, Pieced, Relief, units)
            .Concat(GaveWay is { } gave ? [JointFindings.GaveWay(Case, gave, units)] : []);

    /// <summary>What could be had if the joints of the layer below did not matter.</summary>
    private static LayerChoice Free(
        LayerCase layer,
        ImmutableArray<JointRule> rules,
        LayerChoice chosen,
        CancellationToken stop
    )
    {
        ImmutableArray<JointRule> free = WithoutBelow(rules);
        return free.Length == rules.Length || layer.Planks.All(p => p.IsFreeBelow(rules))
            ? chosen
            : LayerChoice.Of(layer, free, FewestJoints.LittleEffort, stop);
    }

    public static ImmutableArray<JointRule> WithoutBelow(ImmutableArray<JointRule> rules) =>
        rules.RemoveAll(r => r.What == JointRuleKind.JointsBelow);
}
