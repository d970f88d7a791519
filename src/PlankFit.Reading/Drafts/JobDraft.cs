using System.Collections.Immutable;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Layers;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Structure;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Drafts;

/// <summary>The table of offsets as the job names it.</summary>
/// <param name="Path">Null where the job names none.</param>
/// <param name="At">Where the job names it.</param>
/// <param name="Forward">The table's positions grow forward, and so do the positions in the job file.</param>
/// <param name="AsWritten">Cells of it that are right as they are written, and where the job says so.</param>
public sealed record OffsetsDraft(
    string? Path,
    Place At,
    bool Forward,
    ImmutableArray<(string Cell, Place At)> AsWritten
);

/// <summary>A job file as read, before its table of offsets; null where the file does not say or says it wrongly.</summary>
public sealed record JobDraft(
    string? Name,
    LengthUnit? Units,
    OffsetsDraft Offsets,
    HullSpec? Hull,
    ImmutableArray<NamedLine> Lines,
    ImmutableArray<LayerSpec> Layers,
    EndRules Ends,
    BendLimits Limits
)
{
    public string? OffsetsPath => Offsets.Path;

    public Place OffsetsAt => Offsets.At;

    public bool Forward => Offsets.Forward;

    /// <summary>What is written, and how.</summary>
    public OutputSpec Output { get; init; } = OutputSpec.Default;

    public JobParts Parts { get; init; } = JobParts.None;

    /// <summary>Stations of the table that the job names.</summary>
    public ImmutableArray<NamedLine> Stations { get; init; } = [];

    /// <summary>The panels besides the bottom; <see cref="Layers"/> and <see cref="Ends"/> are the bottom's.</summary>
    public ImmutableArray<PanelDraft> Panels { get; init; } = [];

    /// <summary>Some panel has a fault, and is not among <see cref="Panels"/>.</summary>
    public bool PanelsFaulty { get; init; }

    /// <summary>The layers of all panels.</summary>
    public ImmutableArray<LayerSpec> AllLayers => [.. Layers, .. Panels.SelectMany(p => p.Layers)];

    /// <summary>The layers of planks of the panel with this letter, none where there is no such panel.</summary>
    public IEnumerable<PlankLayerSpec> PlankLayersOf(string letter) =>
        (
            letter == PlankId.Bottom
                ? Layers
                : Panels.FirstOrDefault(p => p.Panel.Letter == letter)?.Layers ?? []
        ).OfType<PlankLayerSpec>();

    /// <summary>Where the job says what; none before it is read.</summary>
    public JobPlaces Places { get; init; } = JobPlaces.None;

    /// <summary>The tables with a fault of their own, by their keys in the file; null where the file could not be read whole.</summary>
    public ImmutableHashSet<string>? Faulty { get; init; }

    /// <summary>Where each of <see cref="Layers"/> says how wide it is.</summary>
    public ImmutableArray<Place> WidthsAt { get; init; } = [];
}

/// <summary>What the job says beyond the bottom itself, as read; positions are still in the sense of its table.</summary>
public sealed record JobParts(
    KeelSpec Keel,
    SettingUpSpec? SettingUp,
    JointSpec? Joints,
    ImmutableArray<FramingSpec> Behind,
    FasteningSpec? Fastenings,
    TimberSpec? Timber,
    AsBuiltDraft AsBuilt
)
{
    /// <summary>The lines of the table that keel layers take their half-widths from.</summary>
    public ImmutableArray<NamedLine> KeelLines { get; init; } = [];

    /// <summary>The stock, before the files that it names; null where the job names none.</summary>
    public NestDraft? Nest { get; init; }

    /// <summary>How far table and frames are trusted; null where the job does not ask.</summary>
    public TrustSpec? Trust { get; init; }

    /// <summary>The cloths that sheathing is cut from.</summary>
    public ImmutableArray<ClothSpec> Cloths { get; init; } = [];

    /// <summary>How the cloths of the bottom's stack lie.</summary>
    public ImmutableArray<SheathingSpec> Sheathing { get; init; } = [];

    /// <summary>Resin, glue, crew and clock; null where the job names neither resin nor glue.</summary>
    public GlueSpec? Glue { get; init; }

    /// <summary>What is asked of stiffness and mass; null where nothing is.</summary>
    public StructureSpec? Structure { get; init; }

    public static readonly JobParts None = new(
        KeelSpec.None,
        null,
        null,
        [],
        null,
        null,
        AsBuiltDraft.None
    );
}

/// <summary>A line of the table that the job names, and where it does.</summary>
public sealed record NamedLine(string Key, string Name, Place At)
{
    /// <summary>The panel besides the bottom that it is a line of; null for another.</summary>
    public string? Panel { get; init; }

    /// <summary>The table of the job file in which it does.</summary>
    public string Table { get; init; } = "[hull]";

    /// <summary>The lower and the upper line of that panel, where it says them.</summary>
    public (string? Lower, string? Upper) Edges { get; init; }
}
