using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Keel;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Laying;

/// <summary>A bottom with all its planks laid, those that are sawn in the form that they were sawn in: what every other part of a plan starts from.</summary>
/// <param name="Hull">Of starboard.</param>
/// <param name="Findings">What a person should know of the planks.</param>
public sealed record Planked(
    PlankingJob Job,
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

    /// <summary>The keel of the table as drawn, before anything was measured.</summary>
    internal BuiltKeel DrawnKeel
    {
        get => field ?? (Job.AsBuilt.IsEmpty ? StarboardKeel : Drawn());
        init;
    }

    /// <summary>What was worked out on the way; null where the planks were not laid here.</summary>
    internal LayWorkings? Workings { get; init; }

    internal BuiltKeel KeelOf(Side side) => side == Side.Port ? PortKeel : StarboardKeel;

    private BuiltKeel Drawn()
    {
        PlankingJob drawn = Job with { AsBuilt = AsBuiltSpec.None };
        return BuiltKeel.Of(
            drawn,
            HullAsBuilt.Of(drawn, Side.Starboard, null).Hull,
            Side.Starboard
        );
    }

    /// <summary>How seams that were measured lie against those drawn.</summary>
    internal ImmutableArray<SeamCreep> Drifts { get; init; } = [];

    /// <summary>Every plank on the record of what is sawn, those too that lie nowhere on the bottom as the job now has it.</summary>
    public ImmutableArray<SawnPlank> OnRecord { get; init; } = Job.AsBuilt.Sawn;

    /// <summary>How planks that are sawn fit the places that they have now.</summary>
    internal ImmutableArray<SawnRow> SawnRows { get; init; } = [];

    /// <summary>The plank of this name, or null.</summary>
    public Plank? Find(PlankId id) =>
        PlankLayers.SelectMany(l => l.On(id.Side)).FirstOrDefault(p => p.Id == id);
}
