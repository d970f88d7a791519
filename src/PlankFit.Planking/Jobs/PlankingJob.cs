using System.Collections.Immutable;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Jobs;

/// <summary>What planks are laid by, all lengths in millimetres, angles in degrees as the builder states them.</summary>
public sealed record PlankingJob(
    LengthUnit Units,
    OffsetTable Offsets,
    HullSpec Hull,
    ImmutableArray<LayerSpec> Layers,
    EndRules Ends,
    BendLimits Limits
)
{
    private readonly LengthUnit? written;

    /// <summary>In which the job is written, and so what is bought for it comes in, whatever lengths are shown in.</summary>
    public LengthUnit WrittenIn
    {
        get => written ?? Units;
        init => written = value;
    }

    /// <summary>The keel's layers; none where the job names none.</summary>
    public KeelSpec Keel { get; init; } = KeelSpec.None;

    /// <summary>What was measured on the hull as it stands; empty where nothing was.</summary>
    public AsBuiltSpec AsBuilt { get; init; } = AsBuiltSpec.None;

    /// <summary>What the planks are made of; null where the job does not say.</summary>
    public TimberSpec? Timber { get; init; }
}
