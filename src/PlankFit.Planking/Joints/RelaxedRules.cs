using System.Collections.Immutable;

namespace PlankFit.Planking.Joints;

/// <summary>What would have to give where the rules leave no way.</summary>
/// <param name="Relaxed">The rules to relax, the mildest first; empty where none of them is the cause.</param>
/// <param name="Kept">Of each of them the most that can still be kept, the milder ones relaxed to theirs; null where nothing of it can.</param>
internal sealed record Relief(ImmutableArray<JointRule> Relaxed, ImmutableArray<JointRule?> Kept);

/// <summary>
/// Finds the first rule to relax: one at a time from the mildest (the layer below, planks between, one plank between, the next plank); where no single one
/// is enough, as many of them in that order as it takes, without those that can be kept after all; and of each that gives way, how much can be kept.
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
            LayerChoice
                .Of(layer, [.. with.OrderBy(r => r.What)], FewestJoints.LittleEffort, stop)
                .Choice.Found;
        JointRule[] mildest = [.. rules.OrderByDescending(r => r.What)];
        foreach (JointRule rule in mildest)
        {
            if (Can(rules.Remove(rule)))
            {
                return new([rule], [Most(rule, r => Can(rules.Replace(rule, r)))]);
            }
        }

        ImmutableArray<JointRule> left = rules;
        for (int k = 0; k < mildest.Length; k++)
        {
            left = left.Remove(mildest[k]);
            if (Can(left))
            {
                return Least([.. mildest.Take(k + 1)], left, Can);
            }
        }

        return new([], []);
    }

    /// <summary>Of rules that give way together those that must, and the most of each.</summary>
    /// <param name="left">The rules without them, which can be kept.</param>
    private static Relief Least(
        JointRule[] given,
        ImmutableArray<JointRule> left,
        Func<ImmutableArray<JointRule>, bool> can
    )
    {
        List<JointRule> must = [];
        foreach (JointRule rule in given.Reverse())
        {
            // The gravest first: what a builder would least do without.
            if (can(left.Add(rule)))
            {
                left = left.Add(rule);
            }
            else
            {
                must.Insert(0, rule);
            }
        }

        List<JointRule?> kept = [];
        foreach (JointRule rule in must)
        {
            JointRule? most = Most(rule, r => can(left.Add(r)));
            kept.Add(most);
            left = most is null ? left : left.Add(most);
        }

        return new([.. must], [.. kept]);
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
