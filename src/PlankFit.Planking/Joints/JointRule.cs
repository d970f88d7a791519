using System.Collections.Immutable;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Joints;

/// <summary>What a rule of stagger speaks of; the mildest, which is relaxed first, comes last.</summary>
public enum JointRuleKind
{
    /// <summary>Distance to the joints of the next plank, along the planks.</summary>
    NextPlank,

    /// <summary>Distance to the joints of the plank after the next, one lying between.</summary>
    OneBetween,

    /// <summary>Whole planks between two joints on the same backing.</summary>
    SameBacking,

    /// <summary>Distance to the joints of the layer below, through the skins.</summary>
    JointsBelow,

    /// <summary>Distance of a joint that runs with the seams of the layer below from the nearest of them.</summary>
    SeamsBelow,
}

/// <summary>One rule of stagger, as data.</summary>
/// <param name="DistanceMm">The least distance; for <see cref="JointRuleKind.SameBacking"/>, how near along the hull joints without timber of a name behind them count as on the same, null for not at all.</param>
/// <param name="Count">The least number of whole planks between; only for <see cref="JointRuleKind.SameBacking"/>.</param>
/// <param name="Source">Where it comes from; says so where that is memory, second hand, or nowhere.</param>
public sealed record JointRule(JointRuleKind What, double? DistanceMm, int? Count, string Source)
{
    /// <summary>Nothing is asked.</summary>
    public bool IsNone =>
        What == JointRuleKind.SameBacking ? Count is null or 0 : DistanceMm is null or 0;

    /// <summary>How many planks away a plank's joints still matter.</summary>
    public int Reach =>
        What switch
        {
            JointRuleKind.NextPlank => 1,
            JointRuleKind.OneBetween => 2,
            JointRuleKind.SameBacking => Count ?? 0,
            _ => 0,
        };
}

/// <summary>The rules of stagger that come with the program: defaults to be replaced by what applies where the boat is built.</summary>
public static class JointRules
{
    private const string Underwriters =
        "Great Lakes underwriters' rules 1866, for planking on frames: no butts nearer than 5 ft, 4 ft with a strake between, three strakes between on one timber";

    private const string Yachts =
        "old Lloyd's yacht rules: scarfs of adjacent planks 1.2 m apart, three complete planks between in one transverse plane; second hand";

    /// <summary>Scarfs nearer than this along the hull are in one transverse plane: a proposal, the source gives no figure.</summary>
    private const double SamePlaneMm = 100;

    private const string Through =
        "a proposal without a source for the figure; that joints be staggered through the layers as well is asked for by Gougeon Brothers on Boat Construction, ch. 21";

    private const string Seams = "a proposal without a source";

    /// <summary>The rules for a kind of joint.</summary>
    public static ImmutableArray<JointRule> Usual(JointKind kind) =>
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
            new JointRule(JointRuleKind.JointsBelow, 150, null, Through),
            new JointRule(JointRuleKind.SeamsBelow, 25, null, Seams),
        ];
}
