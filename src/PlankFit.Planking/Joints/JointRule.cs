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
    /// <summary>A proposal of the program's own: where it cannot be kept whole, as much of it is kept as can be, and that is told.</summary>
    public bool GivesWay { get; init; }

    /// <summary>It is what can be kept of such a proposal, found by trying.</summary>
    public bool IsWhatIsKept { get; init; }

    /// <summary>How its distance is told: what is asked never less than it is, what is kept never more.</summary>
    public RoundTo Told => IsWhatIsKept ? RoundTo.Down : RoundTo.Up;

    /// <summary>It speaks of the layer below, which the first layer has not.</summary>
    public bool IsOfBelow => What is JointRuleKind.JointsBelow or JointRuleKind.SeamsBelow;

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
