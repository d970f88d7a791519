using System.Collections.Immutable;

namespace PlankFit.Planking.Joints;

/// <summary>What would have to give where the rules leave no way.</summary>
/// <param name="Relaxed">The rules to relax, the mildest first; empty where none of them is the cause.</param>
/// <param name="To">Where one rule alone is relaxed, the most of it that can still be kept; null where nothing of it can.</param>
internal sealed record Relief(ImmutableArray<JointRule> Relaxed, JointRule? To);

/// <summary>
/// Finds the first rule to relax: one at a time from the mildest (the layer below, planks between, one plank between, the next plank); where no single one
/// is enough, as many of them in that order as it takes.
/// </summary>
internal static class RelaxedRules
{
    private const double StepMm = 25;

    public static Relief Of(
        LayerCase layer,
        ImmutableArray<JointRule> rules,
        CancellationToken stop
    )
    {
        bool Can(ImmutableArray<JointRule> with) =>
            LayerChoice.Of(layer, with, FewestJoints.LittleEffort, stop).Choice.Found;
        JointRule[] mildest = [.. rules.OrderByDescending(r => r.What)];
        foreach (JointRule rule in mildest)
        {
            if (Can(rules.Remove(rule)))
            {
                return new([rule], Most(rule, r => Can(rules.Replace(rule, r))));
            }
        }

        ImmutableArray<JointRule> left = rules;
        for (int k = 0; k < mildest.Length; k++)
        {
            left = left.Remove(mildest[k]);
            if (Can(left))
            {
                return new([.. mildest.Take(k + 1)], null);
            }
        }

        return new([], null);
    }

    /// <summary>The strictest form of a rule that can still be kept, by halving.</summary>
    private static JointRule? Most(JointRule rule, Func<JointRule, bool> can)
    {
        bool counts = rule.What == JointRuleKind.SameBacking;
        int low = 0,
            high = counts ? rule.Count ?? 0 : (int)Math.Ceiling((rule.DistanceMm ?? 0) / StepMm);
        JointRule With(int steps) =>
            counts ? rule with { Count = steps } : rule with { DistanceMm = steps * StepMm };
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            (low, high) = can(With(middle)) ? (middle, high) : (low, middle);
        }

        return low == 0 ? null : With(low);
    }
}
