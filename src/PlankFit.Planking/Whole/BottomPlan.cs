using System.Collections.Immutable;
using PlankFit.Planking.AsBuilt;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Joints;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Structure;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Timber;
using PlankFit.Planking.Trust;

namespace PlankFit.Planking.Whole;

/// <summary>The whole answer for a bottom: every layer, every plank, what was worked out besides, and what a person should know.</summary>
public sealed record BottomPlan(Job Job, Planked Planked)
{
    public HullSurface Hull => Planked.Hull;

    public ImmutableArray<LayerPlan> Layers
    {
        get => Planked.Layers;
        init => Planked = Planked with { Layers = value };
    }

    public IEnumerable<PlankLayerPlan> PlankLayers => Planked.PlankLayers;

    /// <summary>The plans of the hull's other panels, each with a job that has that panel for its planking.</summary>
    public ImmutableArray<BottomPlan> Others { get; init; } = [];

    /// <summary>This plan and those of the other panels.</summary>
    public IEnumerable<BottomPlan> Panels => Others.Prepend(this);

    /// <summary>Every layer of planks of every panel, with its panel's plan.</summary>
    public IEnumerable<(BottomPlan Panel, PlankLayerPlan Layer)> AllPlankLayers =>
        Panels.SelectMany(p => p.PlankLayers.Select(l => (p, l)));

    /// <summary>The same with some words in the margin of every sheet.</summary>
    public BottomPlan WithMargin(string words) =>
        this with
        {
            Job = Job with { Margin = words },
            Others = [.. Others.Select(o => o.WithMargin(words))],
        };

    /// <summary>The plan that a plank belongs to, by its panel's letter.</summary>
    public BottomPlan PanelOf(PlankId id) =>
        Others.FirstOrDefault(p => p.Job.Hull.Panel.Letter == id.Panel) ?? this;

    /// <summary>The layer that a plank belongs to.</summary>
    public PlankLayerPlan LayerOf(PlankId id) =>
        PanelOf(id).PlankLayers.First(l => l.Number == id.Layer);

    /// <summary>Of all parts.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = Planked.Findings;

    /// <summary>The port bottom in the starboard frame: the same as <see cref="Hull"/> unless girths were measured.</summary>
    public HullSurface PortHull => Planked.PortHull;

    /// <summary>Every plank on the record of what is sawn, those too that lie nowhere on the bottom as the job now has it.</summary>
    public ImmutableArray<SawnPlank> OnRecord { get; init; } = Planked.OnRecord;

    /// <summary>The keel held against the planking; null where the job names no keel layer.</summary>
    public KeelPlan? Keel { get; init; }

    /// <summary>Deductions, bevels and the corner at the chine; null where the job does not ask for them.</summary>
    public SettingUpPlan? SettingUp { get; init; }

    /// <summary>The pieces of planks longer than the stock; none where the job does not say how long that is.</summary>
    public JointPlan Joints { get; init; } = JointPlan.None;

    /// <summary>Where what lies behind crosses every plank; nowhere where the job names nothing there.</summary>
    public FramingPlan Framing { get; init; } = FramingPlan.None;

    public FasteningPlan? Fastenings { get; init; }

    public TimberPlan? Timber { get; init; }

    /// <summary>Resin, batches and sessions; null where the job names neither resin nor glue.</summary>
    public GluePlan? Glue { get; init; }

    /// <summary>Stiffness, mass and bill of materials; null where the job does not ask.</summary>
    public StructurePlan? Structure { get; init; }

    /// <summary>Every cloth as it lies and is cut; null where the job does not say how.</summary>
    public SheathingPlan? Sheathing { get; init; }

    /// <summary>How sure the planks are; null where the job does not ask.</summary>
    public TrustPlan? Trust { get; init; }

    /// <summary>The timber of the first panel that has planks: its woods and figures are those of the job.</summary>
    public TimberPlan? JobTimber => Panels.Select(p => p.Timber).FirstOrDefault(t => t is not null);

    /// <summary>What the hull as it stands makes of the plan: of this panel alone.</summary>
    public AsBuiltPlan? AsBuilt { get; init; }

    /// <summary>The same with the sawn planks of every panel, the bottom's first; null where nothing was measured and nothing is sawn.</summary>
    public AsBuiltPlan? AsBuiltOfAll
    {
        get
        {
            SawnRow[] others = [.. Others.SelectMany(p => p.AsBuilt?.Sawn ?? [])];
            if (others.Length == 0)
            {
                return AsBuilt;
            }

            AsBuiltPlan own = AsBuilt ?? AsBuiltPlan.Nothing;
            return own with { Sawn = [.. own.Sawn, .. others] };
        }
    }

    /// <summary>What the tape said of the hull; null without [trust], or where nothing was read.</summary>
    public TapedHull? Taped { get; init; }

    /// <summary>The planks in the boards on hand; null where the job names no stock, or they were not nested yet.</summary>
    public NestPlan? Nest { get; init; }

    /// <summary>The parts above with what they were made from; <c>Nest</c> is not among them.</summary>
    internal ImmutableArray<MadePart> Made { get; init; } = [];

    /// <summary>All that is still to be sawn out of the stock.</summary>
    /// <exception cref="InvalidOperationException">The job names no stock.</exception>
    public ImmutableArray<SawPiece> PiecesToSaw() => Pieces(SawPieces.Of);

    /// <summary>What is not sawn since its plank is refused.</summary>
    /// <exception cref="InvalidOperationException">The job names no stock.</exception>
    public ImmutableArray<SawPiece> PiecesRefused() => Pieces(SawPieces.Refused);

    private ImmutableArray<SawPiece> Pieces(
        Func<NestSpec, Planked, JointPlan, ImmutableArray<SawPiece>> of
    ) =>
        [
            .. Panels.SelectMany(p =>
                of(
                    Job.Nest ?? throw new InvalidOperationException("the job names no stock"),
                    p.Planked,
                    p.Joints
                )
            ),
        ];

    /// <summary>The bottom of one side, in the starboard frame.</summary>
    public HullSurface HullOf(Side side) => Planked.HullOf(side);

    /// <summary>The plank that a person names, in capitals or not; null where there is none.</summary>
    public Plank? Find(string words) =>
        PlankId.Parse(words.ToUpperInvariant()) is { } id ? Find(id) : null;

    /// <summary>The plank of this name, or null.</summary>
    public Plank? Find(PlankId id) => PanelOf(id).Planked.Find(id);
}
