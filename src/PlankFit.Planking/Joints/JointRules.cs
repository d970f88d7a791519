using System.Collections.Immutable;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Joints;

/// <summary>What a skin is to those who made the rules about its joints.</summary>
public enum Skin
{
    /// <summary>Layers glued on each other, each of which carries the joints of its neighbours.</summary>
    GluedLayers,

    /// <summary>Planks that stand for themselves on frames.</summary>
    OnFrames,
}

/// <summary>The rules of stagger that come with the program: defaults to be replaced by what applies where the boat is built.</summary>
public static class JointRules
{
    /// <summary>What stands beside a figure that is ours.</summary>
    public const string Proposal = "proposal, no source";

    private const string Underwriters =
        "Great Lakes underwriters' rules 1866, for planking on frames: no butts nearer than 5 ft, 4 ft with a strake between, three strakes between on one timber";

    private const string Yachts =
        "old Lloyd's yacht rules: scarfs of adjacent planks 1.2 m apart, three complete planks between in one transverse plane; second hand";

    /// <summary>Scarfs nearer than this along the hull are in one transverse plane: a proposal, the source gives no figure.</summary>
    private const double SamePlaneMm = 100;

    private static readonly JointRule SeamsBelow = Ours(JointRuleKind.SeamsBelow, 25);

    /// <summary>The rules for planks on frames; those of the layer below are there for skins that have one.</summary>
    public static ImmutableArray<JointRule> OnFrames(JointKind kind) =>
        [
            .. kind == JointKind.Butt
                ?
                [
                    new JointRule(
                        JointRuleKind.NextPlank,
                        5 * LengthUnits.MmPerFoot,
                        null,
                        Underwriters
                    ),
                    new JointRule(
                        JointRuleKind.OneBetween,
                        4 * LengthUnits.MmPerFoot,
                        null,
                        Underwriters
                    ),
                    new JointRule(JointRuleKind.SameBacking, null, 3, Underwriters),
                ]
                : new[]
                {
                    new JointRule(JointRuleKind.NextPlank, 1200, null, Yachts),
                    new JointRule(JointRuleKind.SameBacking, SamePlaneMm, 3, Yachts),
                },
            Ours(JointRuleKind.JointsBelow, 150),
            SeamsBelow,
        ];

    /// <summary>
    /// The rules for layers glued on each other, by the stock's width: two widths to the joints of the next plank (of scarfs no less than one is long, or
    /// they would lie side by side), one to those of the layer below. No builder's figures are known to us: proposals all of them. That joints be staggered
    /// across and through the layers is asked for by Gougeon Brothers on Boat Construction, ch. 21, without a figure.
    /// </summary>
    /// <param name="scarfMm">Length of a scarf's overlap; 0 for butts.</param>
    public static ImmutableArray<JointRule> Glued(double widthMm, double scarfMm) =>
        [
            Ours(JointRuleKind.NextPlank, Math.Max(2 * widthMm, scarfMm)),
            Ours(JointRuleKind.JointsBelow, widthMm),
            SeamsBelow,
        ];

    private static JointRule Ours(JointRuleKind what, double leastMm) =>
        new(what, leastMm, null, Proposal) { GivesWay = true };
}
