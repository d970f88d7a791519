using System.Collections.Immutable;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Joints;

/// <summary>The distances that the rules speak of, for every joint chosen.</summary>
internal static class JointDistances
{
    /// <param name="ids">The id of each joint of each plank.</param>
    /// <param name="plank">Which plank of the layer.</param>
    public static ImmutableArray<JointDistance> Of(
        LayerCase layer,
        ImmutableArray<JointScheme> ways,
        Func<int, int, JointId> ids,
        ImmutableArray<JointRule> rules,
        int plank,
        JointPlace place
    ) =>
        [
            .. rules
                .Select(rule =>
                    rule.What switch
                    {
                        JointRuleKind.NextPlank => Along(ways, ids, rule, plank, place, 1),
                        JointRuleKind.OneBetween => Along(ways, ids, rule, plank, place, 2),
                        JointRuleKind.SameBacking => Between(ways, ids, rule, plank, place),
                        _ => Below(layer.Planks[plank], rule, place),
                    }
                )
                .OfType<JointDistance>(),
        ];

    private static JointDistance? Along(
        ImmutableArray<JointScheme> ways,
        Func<int, int, JointId> ids,
        JointRule rule,
        int plank,
        JointPlace place,
        int apart
    ) =>
        Others(ways, plank)
            .Where(o => Math.Abs(o.Plank - plank) == apart)
            .Select(o => new JointDistance(
                rule,
                $"{ids(o.Plank, o.Joint)}",
                JointRuleCheck.AlongMm(place, o.Place),
                null
            ))
            .MinBy(d => d.DistanceMm);

    private static JointDistance? Between(
        ImmutableArray<JointScheme> ways,
        Func<int, int, JointId> ids,
        JointRule rule,
        int plank,
        JointPlace place
    ) =>
        Others(ways, plank)
            .Where(o => JointRuleCheck.OnTheSame(rule, place, o.Place))
            .Select(o => new JointDistance(
                rule,
                $"{ids(o.Plank, o.Joint)}",
                null,
                Math.Abs(o.Plank - plank) - 1
            ))
            .MinBy(d => d.Between);

    private static JointDistance? Below(PlankCase plank, JointRule rule, JointPlace place)
    {
        SeenPlace seen = plank.Places.First(p => ReferenceEquals(p.Place, place));
        return rule.What == JointRuleKind.JointsBelow
            ? seen.JointBelow is { } joint
                ? new(rule, $"{joint.Id}", joint.Mm, null)
                : null
            : seen.SeamBelow is { } seam
                ? new(rule, $"{seam.Id}", seam.Mm, null)
                : null;
    }

    private static IEnumerable<(int Plank, int Joint, JointPlace Place)> Others(
        ImmutableArray<JointScheme> ways,
        int plank
    ) =>
        ways.SelectMany(
            (way, i) => i == plank ? [] : way.Joints.Select((place, k) => (i, k, place))
        );
}
