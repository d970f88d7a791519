using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Joints;

/// <summary>The joints of one side: layer by layer from the inside out, each with the one below settled.</summary>
internal static class SideJoints
{
    /// <param name="settled">The first layers, where they are settled already; null for a layer that is not pieced.</param>
    public static List<SettledLayer?> Of(
        JointSpec spec,
        Planked planked,
        FramingPlan behind,
        Side side,
        IEnumerable<SettledLayer?> settled,
        CancellationToken stop
    )
    {
        PlankLayerPlan[] layers = [.. planked.PlankLayers];
        List<SettledLayer?> all = [.. settled];
        int given = all.Count;
        for (int i = given; i < layers.Length; i++)
        {
            if (spec.Of(layers[i].Spec.Name) is not { } stock)
            {
                all.Add(null);
                continue;
            }

            ImmutableArray<JointRule> rules =
            [
                .. spec.RulesFor(stock, layers[i].Planks, layers.Length)
                    .Where(r => i > 0 || !r.IsOfBelow),
            ];
            SettledLayer Over(SettledLayer? below) =>
                SettledLayer.Of(
                    LayerCase.Of(
                        behind,
                        layers[i],
                        side,
                        stock,
                        i == 0 ? null : (layers[i - 1], below?.Pieced)
                    ),
                    rules,
                    stop
                );
            SettledLayer here = Over(i == 0 ? null : all[i - 1]);
            if (
                i > given
                && here.IsHinderedByBelow
                && all[i - 1] is { } lower
                && OtherBelow(lower, here, stop) is { } other
                && Over(other) is { Choice.Found: true } better
                && (
                    !here.Choice.Found
                    || other.Choice.Pieces + better.Choice.Pieces
                        < lower.Choice.Pieces + here.Choice.Pieces
                )
            )
            {
                all[i - 1] = other;
                here = better;
            }

            all.Add(here.GivingWay(stop));
        }

        return all;
    }

    /// <summary>The layer below settled anew, out of the way of the joints that the one above would have if it were free to choose; null where that cannot be.</summary>
    private static SettledLayer? OtherBelow(
        SettledLayer lower,
        SettledLayer upper,
        CancellationToken stop
    )
    {
        JointRule? below = upper.Rules.FirstOrDefault(r => r.What == JointRuleKind.JointsBelow);
        if (below is null)
        {
            return null;
        }

        SchemeChoice free = LayerChoice
            .Of(upper.Case, SettledLayer.WithoutBelow(upper.Rules), FewestJoints.LittleEffort, stop)
            .Choice;
        if (!free.Found || !lower.Choice.Found)
        {
            return null;
        }

        LayerCase clear = LayerAbove.ClearOf(
            lower.Case,
            upper.Case,
            free.Ways,
            below.DistanceMm ?? 0
        );
        SchemeChoice choice = LayerChoice
            .Of(clear, lower.Rules, FewestJoints.LittleEffort, stop)
            .Choice;
        return choice.Found ? lower with { Choice = choice } : null;
    }
}
