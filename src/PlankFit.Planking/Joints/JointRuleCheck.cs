using System.Collections.Immutable;

namespace PlankFit.Planking.Joints;

/// <summary>Whether joints of two planks of a layer keep the rules between them.</summary>
public static class JointRuleCheck
{
    /// <summary>A distance short by less is the noise of computing, mm.</summary>
    private const double NoiseMm = 1e-6;

    /// <param name="apart">How many planks the second is from the first: 1 for neighbours.</param>
    public static bool Allows(
        ImmutableArray<JointRule> rules,
        JointPlace a,
        JointPlace b,
        int apart
    )
    {
        foreach (JointRule rule in rules)
        {
            if (!Allows(rule, a, b, apart))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Every joint of the one against every joint of the other.</summary>
    public static bool Allows(
        ImmutableArray<JointRule> rules,
        JointScheme a,
        JointScheme b,
        int apart
    )
    {
        foreach (JointPlace p in a.Joints)
        {
            foreach (JointPlace q in b.Joints)
            {
                if (!Allows(rules, p, q, apart))
                {
                    return false;
                }
            }
        }

        return true;
    }

    /// <summary>Whether two joints count as on the same backing under a rule that counts planks.</summary>
    public static bool OnTheSame(JointRule rule, JointPlace a, JointPlace b) =>
        a.Named && b.Named
            ? string.Equals(a.Backing, b.Backing, StringComparison.Ordinal)
            : rule.DistanceMm is { } near && Math.Abs(a.XMm - b.XMm) < near - NoiseMm;

    /// <summary>The distance along the planks between two joints of different planks, mm.</summary>
    public static double AlongMm(JointPlace a, JointPlace b) => Math.Abs(a.AlongMm - b.AlongMm);

    private static bool Allows(JointRule rule, JointPlace a, JointPlace b, int apart) =>
        rule.What switch
        {
            JointRuleKind.NextPlank => apart != 1 || AlongMm(a, b) >= rule.DistanceMm - NoiseMm,
            JointRuleKind.OneBetween => apart != 2 || AlongMm(a, b) >= rule.DistanceMm - NoiseMm,
            JointRuleKind.SameBacking => apart > rule.Count || !OnTheSame(rule, a, b),
            // Those of the layer below concern each joint by itself.
            _ => true,
        };
}
