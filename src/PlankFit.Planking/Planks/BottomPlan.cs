using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>The whole answer for a bottom: every layer, every plank, and what a person should know.</summary>
public sealed record BottomPlan(
    Job Job,
    HullSurface Hull,
    ImmutableArray<LayerPlan> Layers,
    ImmutableArray<Finding> Findings
)
{
    public IEnumerable<PlankLayerPlan> PlankLayers => Layers.OfType<PlankLayerPlan>();

    /// <summary>The port bottom in the starboard frame: the same as <see cref="Hull"/> unless girths were measured.</summary>
    public HullSurface PortHull { get; init; } = Hull;

    /// <summary>The bottom of one side, in the starboard frame.</summary>
    public HullSurface HullOf(Side side) => side == Side.Port ? PortHull : Hull;

    /// <summary>The keel as built up on starboard, which the planks meet.</summary>
    internal BuiltKeel StarboardKeel
    {
        get => field ?? BuiltKeel.Of(Job, Hull, Side.Starboard);
        init;
    }

    /// <summary>The same of port; the very same where nothing sets the sides apart.</summary>
    internal BuiltKeel PortKeel
    {
        get => field ?? BuiltKeel.Of(Job, PortHull, Side.Port);
        init;
    }

    internal BuiltKeel KeelOf(Side side) => side == Side.Port ? PortKeel : StarboardKeel;

    /// <summary>How seams that were measured lie against those drawn.</summary>
    internal ImmutableArray<SeamDrift> Drifts { get; init; } = [];

    /// <summary>Every plank on the record of what is sawn, those too that lie nowhere on the bottom as the job now has it.</summary>
    public ImmutableArray<CutPlank> OnRecord { get; init; } = Job.Standing.Cut;

    /// <summary>How planks that are sawn fit the places that they have now.</summary>
    internal ImmutableArray<CutRow> CutRows { get; init; } = [];

    /// <summary>The keel held against the planking; null where the job names no keel layer.</summary>
    public KeelPlan? Keel { get; init; }

    /// <summary>Deductions, bevels and the corner at the chine; null where the job does not ask for them.</summary>
    public SettingUpPlan? SettingUp { get; init; }

    /// <summary>The pieces of planks longer than the stock.</summary>
    public JointPlan? Joints { get; init; }

    /// <summary>Where what lies behind crosses every plank.</summary>
    public BehindPlan? Behind { get; init; }

    public FasteningPlan? Fastenings { get; init; }

    public TimberPlan? Timber { get; init; }

    /// <summary>What the hull as it stands makes of the plan.</summary>
    public StandingPlan? Standing { get; init; }

    /// <summary>The planks in the boards on hand; null where the job names no stock, or they were not nested yet.</summary>
    public NestPlan? Nest { get; init; }

    /// <summary>The plank that a person names, in capitals or not; null where there is none.</summary>
    public Plank? Find(string words) =>
        PlankId.Parse(words.ToUpperInvariant()) is { } id ? Find(id) : null;

    /// <summary>The plank of this name, or null.</summary>
    public Plank? Find(PlankId id) =>
        PlankLayers.SelectMany(l => l.On(id.Side)).FirstOrDefault(p => p.Id == id);
}

public abstract record LayerPlan(LayerSpec Spec);

public sealed record ClothLayerPlan(ClothLayerSpec Cloth) : LayerPlan(Cloth);

/// <param name="Number">Counts plank layers only, from 1, from the inside out.</param>
/// <param name="NeutralOffsetMm">Of the mid-thickness surface from the table's surface, along the outward normal.</param>
/// <param name="AreaMm2">Of the layer's region, one side, on its mid-thickness surface.</param>
/// <param name="MasterShiftMm">By how much the master plank was moved (aft positive) to avoid a sliver at a corner.</param>
/// <param name="Outline">The region's boundary in space, starboard, counter-clockwise seen from outside.</param>
public sealed record PlankLayerPlan(
    int Number,
    PlankLayerSpec Planks,
    double NeutralOffsetMm,
    double AreaMm2,
    double MasterShiftMm,
    int MasterNumber,
    ISurface Surface,
    ImmutableArray<Vec3> Outline,
    ImmutableArray<Plank> Starboard,
    ImmutableArray<Plank> Port
) : LayerPlan(Planks)
{
    /// <summary>What a tape should read for the master plank, the first, the last and every fifth, both sides.</summary>
    public ImmutableArray<SeamCheck> Checks { get; init; } = [];

    /// <summary>Sawn planks of this layer that lie nowhere on it, by id, and what is amiss.</summary>
    internal ImmutableDictionary<PlankId, string> Strays { get; init; } =
        ImmutableDictionary<PlankId, string>.Empty;

    /// <summary>The port side's own plan, in the starboard frame, where the two sides were measured apart; null where they are mirror images.</summary>
    public PlankLayerPlan? PortApart { get; init; }

    /// <summary>The plan that holds on a side, in the starboard frame: its surface, outline, area and master.</summary>
    public PlankLayerPlan Of(Side side) => side == Side.Port ? PortApart ?? this : this;

    public ImmutableArray<Plank> On(Side side) => side == Side.Starboard ? Starboard : Port;
}
