using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Fastenings;

/// <summary>Every fastening of every plank, and what is to be bought.</summary>
public sealed record FasteningPlan(
    ImmutableArray<LayerFastenings> Layers,
    ImmutableDictionary<PlankId, PlankFastenings> ByPlank,
    ImmutableArray<FasteningTotal> Totals,
    ImmutableArray<Finding> Findings
)
{
    /// <summary>Where fastenings along a timber are further apart than the spacing, whatever planks lie on it.</summary>
    public ImmutableArray<TimberGap> Gaps { get; init; } = [];

    /// <summary>The same layer by layer and side by side, with what each was fastened by.</summary>
    internal ImmutableArray<LayerFastened> Fastened { get; init; } = [];

    /// <summary>Bought beyond what is counted.</summary>
    public double SparePercent { get; init; } = FasteningSpec.UsualSparePercent;

    /// <summary>The fastenings of a plank; null where its id is not known.</summary>
    public PlankFastenings? On(PlankId plankId) => ByPlank.GetValueOrDefault(plankId);
}

/// <summary>The rule of a layer and the lengths that it comes to.</summary>
public sealed record LayerFastenings(
    int Layer,
    string Name,
    FasteningRule Rule,
    ImmutableArray<ChosenLength> Lengths
);

/// <param name="Short">Backings with fewer than the spacing asks for, or none, and why.</param>
public sealed record PlankFastenings(
    PlankId PlankId,
    ImmutableArray<Fastening> Points,
    ImmutableArray<FasteningGap> Short
);

/// <summary>What a point on a plank is there for.</summary>
public enum FasteningUse
{
    /// <summary>Into the timber behind.</summary>
    Backing,

    /// <summary>Between the timbers, to the skin below.</summary>
    PullDown,

    /// <summary>A hole by which air and glue leave under vacuum.</summary>
    Vent,
}

/// <summary>One point of a plank, in the plank's own flat (s, n), mm; through the plank along the surface's normal.</summary>
/// <param name="Backing">Name of what lies behind; null for pull-down points and vents.</param>
/// <param name="LengthMm">Under the head (legs of a staple); null for a vent and where none that can be had will do.</param>
public sealed record Fastening(
    FasteningUse Use,
    FasteningKind Kind,
    FastenerShape Shape,
    string? Backing,
    Vec2 At,
    double? LengthMm
)
{
    /// <summary>It goes in: no vent, and of a length that can be had.</summary>
    public bool IsDriven => Use != FasteningUse.Vent && LengthMm is not null;

    /// <summary>Taken out again: its hole is to be filled.</summary>
    public bool IsTemporary =>
        Kind is FasteningKind.ScrewAndPad or FasteningKind.StapleThroughStrap;
}

/// <summary>A backing under a plank without a fastening; or a corner of one with fewer than the spacing asks for.</summary>
/// <param name="Placed">How many there are on this backing all the same.</param>
/// <param name="GapMm">The widest stretch without one, along the backing.</param>
/// <param name="Hindered">By what, at the best place.</param>
public sealed record FasteningGap(string Backing, int Placed, double GapMm, Hindrance Hindered)
{
    /// <summary>Gaps nearer to each other than this are told by the same figure, mm.</summary>
    internal const double SameMm = 0.1;

    /// <summary>Whether it is the mirror image of one on the plank's twin.</summary>
    public bool IsTwinOf(FasteningGap other) =>
        (Backing, Placed, Hindered.By) == (other.Backing, other.Placed, other.Hindered.By.Twin)
        && Math.Abs(GapMm - other.GapMm) < SameMm;
}

/// <summary>What stands in the way of a fastening.</summary>
/// <param name="By">"the after seam".</param>
/// <param name="HasMm">How far the place is from it; <paramref name="AsksMm"/> what the rule asks.</param>
public sealed record Hindrance(Obstacle By, double HasMm, double AsksMm)
{
    /// <summary>The same of the mirror image.</summary>
    public Hindrance ToPort() => this with { By = By.Twin };
}

/// <summary>A stretch of timber along which no fastening is for longer than the spacing, across seams as well.</summary>
/// <param name="GapMm">From one fastening to the next along the timber's middle, on the layer's own surface; to the end of it where there is none.</param>
/// <param name="From">The plank of the one; null at the timber's end. <paramref name="To"/> that of the other.</param>
/// <param name="Hindered">By what, at the best place between them.</param>
public sealed record TimberGap(
    int Layer,
    Side Side,
    string Backing,
    double GapMm,
    PlankId? From,
    PlankId? To,
    Hindrance Hindered
)
{
    /// <summary>Whether it is the mirror image of one on the other side.</summary>
    public bool IsTwinOf(TimberGap other) =>
        Side != other.Side
        && (Layer, Backing, From, To, Hindered.By)
            == (
                other.Layer,
                other.Backing,
                other.From?.Twin,
                other.To?.Twin,
                other.Hindered.By.Twin
            )
        && Math.Abs(GapMm - other.GapMm) < FasteningGap.SameMm;
}

/// <summary>A fastening's length reckoned: pad + skins and cloth passed + bite, up to what can be had.</summary>
/// <param name="Backing">Name of what lies behind; null for pull-down points.</param>
/// <param name="PassedMm">Skins and cloth between the pad and the timber that it bites into.</param>
/// <param name="WantedBiteMm">As the rule asks.</param>
/// <param name="DepthMm">Of the timber (block, skins) that it bites into; null where not known.</param>
/// <param name="LengthMm">Chosen; null where none that can be had will do.</param>
/// <param name="BiteMm">That the chosen length gives.</param>
public sealed record ChosenLength(
    FasteningUse Use,
    string? Backing,
    double PadMm,
    double PassedMm,
    double WantedBiteMm,
    double? DepthMm,
    double? LengthMm,
    double BiteMm
);

/// <summary>What a fastening is for, how it is put in, and what it is.</summary>
public readonly record struct FasteningSort(
    FasteningUse Use,
    FasteningKind Kind,
    FastenerShape Shape
);

/// <summary>How many of one kind and length a layer takes on one side.</summary>
/// <param name="LengthMm">Null for vents, and for places where no length that can be had will do.</param>
/// <param name="WithSpare">How many to buy; of vents how many there are, and 0 where no length will do.</param>
public sealed record FasteningTotal(
    int Layer,
    Side Side,
    FasteningSort Sort,
    string? Name,
    double? LengthMm,
    int Count,
    int WithSpare
)
{
    public FasteningUse Use => Sort.Use;

    public FasteningKind Kind => Sort.Kind;

    public FastenerShape Shape => Sort.Shape;

    /// <summary>No vent, and of a length that can be had.</summary>
    public bool IsToBuy => Use != FasteningUse.Vent && LengthMm is not null;

    /// <summary>Places for which no length that can be had will do: nothing is bought for them and nothing driven.</summary>
    public bool HasNoLength => Use != FasteningUse.Vent && LengthMm is null;

    /// <summary>Holes left when the temporary ones are out: one for a screw or a vent, two for a staple.</summary>
    public int HolesToFill =>
        HasNoLength ? 0
        : Use == FasteningUse.Vent ? Count
        : Kind == FasteningKind.ScrewAndPad ? Count
        : Kind == FasteningKind.StapleThroughStrap ? 2 * Count
        : 0;
}
