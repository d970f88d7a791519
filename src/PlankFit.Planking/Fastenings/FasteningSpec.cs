using System.Collections.Immutable;

namespace PlankFit.Planking.Fastenings;

/// <summary>How planks are held while the glue sets, or for good.</summary>
/// <param name="Usual">For every layer, where its own wish is silent.</param>
/// <param name="ByLayer">Of layers that are done otherwise, by name.</param>
/// <param name="BackingDepthMm">Of the timber behind, square to the planking; null where the job does not say.</param>
/// <param name="Depths">The same for single pieces behind, by name.</param>
/// <param name="SparePercent">Bought beyond what is counted.</param>
public sealed record FasteningSpec(
    FasteningSettings Usual,
    ImmutableDictionary<string, FasteningSettings> ByLayer,
    double? BackingDepthMm,
    ImmutableDictionary<string, double> Depths,
    double SparePercent
)
{
    /// <summary>Spare where the job names none: a proposal without a source.</summary>
    public const double UsualSparePercent = 10;

    /// <summary>What is wished for a layer.</summary>
    public FasteningSettings Of(string layer) =>
        ByLayer.TryGetValue(layer, out FasteningSettings? own) ? own.Over(Usual) : Usual;

    /// <summary>Depth of what lies behind, by its name; null where not known.</summary>
    public double? DepthOf(string backing) =>
        Depths.TryGetValue(backing, out double own) ? own : BackingDepthMm;
}

/// <summary>What holds a plank.</summary>
public enum FasteningKind
{
    /// <summary>A screw, nail or staple into the timber behind, for good.</summary>
    LeftIn,

    /// <summary>A screw through a pad, taken out when the glue has set.</summary>
    ScrewAndPad,

    /// <summary>A staple through a strap by which it is pulled out.</summary>
    StapleThroughStrap,

    /// <summary>Vacuum or weights.</summary>
    None,
}

/// <summary>What a fastening that is left in is.</summary>
public enum FastenerShape
{
    Screw,
    Nail,
    Staple,
}

/// <summary>What a job says of its fastenings, lengths in mm; null where it is silent and <see cref="FasteningRule"/> fills in.</summary>
public sealed record FasteningSettings
{
    public static readonly FasteningSettings None = new();

    public FasteningKind? Kind { get; init; }
    public FastenerShape? Shape { get; init; }

    /// <summary>What to ask for in the shop.</summary>
    public string? Name { get; init; }

    public double? SpacingMm { get; init; }
    public double? NearestMm { get; init; }
    public double? EdgeMm { get; init; }
    public double? EndMm { get; init; }
    public double? JointMm { get; init; }
    public double? BelowMm { get; init; }
    public double? MissMm { get; init; }
    public double? MarginMm { get; init; }
    public double? OpenMm { get; init; }
    public double? PadMm { get; init; }
    public double? BiteMm { get; init; }
    public double? HoleMm { get; init; }
    public double? VentMm { get; init; }

    /// <summary>Lengths that can be had; null for any.</summary>
    public ImmutableArray<double>? LengthsMm { get; init; }

    public PullDownWish? PullDown { get; init; }

    /// <summary>This wish, and the other's where this one is silent. A layer of another kind takes over no length, pad, bite or name: they belong to the kind.</summary>
    public FasteningSettings Over(FasteningSettings other)
    {
        bool sameKind = Kind is null || Kind == other.Kind;
        FasteningSettings kind = sameKind ? other : None;
        return new()
        {
            Kind = Kind ?? other.Kind,
            Shape = Shape ?? kind.Shape,
            Name = Name ?? kind.Name,
            SpacingMm = SpacingMm ?? other.SpacingMm,
            NearestMm = NearestMm ?? other.NearestMm,
            EdgeMm = EdgeMm ?? other.EdgeMm,
            EndMm = EndMm ?? other.EndMm,
            JointMm = JointMm ?? other.JointMm,
            BelowMm = BelowMm ?? other.BelowMm,
            MissMm = MissMm ?? other.MissMm,
            MarginMm = MarginMm ?? other.MarginMm,
            OpenMm = OpenMm ?? other.OpenMm,
            PadMm = PadMm ?? kind.PadMm,
            BiteMm = BiteMm ?? kind.BiteMm,
            HoleMm = HoleMm ?? kind.HoleMm,
            VentMm = VentMm ?? other.VentMm,
            LengthsMm = LengthsMm ?? kind.LengthsMm,
            PullDown = PullDown ?? other.PullDown,
        };
    }
}

/// <summary>What a job says of the points between the timbers where a plank is pulled down to the skin below.</summary>
/// <param name="Off">The job wants none.</param>
/// <param name="BlockMm">Thickness of the loose block behind a screw.</param>
public sealed record PullDownWish(
    bool Off,
    FasteningKind? Kind,
    double? SpacingMm,
    double? AcrossMm,
    double? PadMm,
    double? BiteMm,
    double? BlockMm,
    ImmutableArray<double>? LengthsMm
);
