using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>What planks are laid by, all lengths in millimetres, angles in degrees as the builder states them.</summary>
/// <param name="Revision">Six hexadecimal digits that change when any input file changes; printed on every sheet.</param>
public sealed record PlankingJob(
    string Name,
    string Revision,
    LengthUnit Units,
    OffsetTable Offsets,
    HullSpec Hull,
    ImmutableArray<LayerSpec> Layers,
    EndRules Ends,
    BendLimits Limits
)
{
    /// <summary>The keel's layers; none where the job names none.</summary>
    public KeelSpec Keel { get; init; } = KeelSpec.None;

    /// <summary>What was measured on the hull as it stands; empty where nothing was.</summary>
    public StandingSpec Standing { get; init; } = StandingSpec.None;

    /// <summary>What the planks are made of; null where the job does not say.</summary>
    public TimberSpec? Timber { get; init; }
}

/// <summary>Which lines of the table make the bottom, and which face of the finished stack the table is to.</summary>
public sealed record HullSpec(
    string Keel,
    string Chine,
    ImmutableArray<string> Between,
    OffsetsAreTo OffsetsAreTo,
    KeelSide KeelSide
);

public enum OffsetsAreTo
{
    Outside,
    Inside,
}

/// <summary>How the keel's side stands: a vertical surface through the keel line, or square to the planking.</summary>
public enum KeelSide
{
    Plumb,
    SquareToPlank,
}

/// <summary>One layer of the stack, from the inside out.</summary>
public abstract record LayerSpec(string Name, double ThicknessMm);

/// <summary>Cloth or anything else that only adds thickness.</summary>
public sealed record ClothLayerSpec(string Name, double ThicknessMm) : LayerSpec(Name, ThicknessMm)
{
    /// <summary>Where port and starboard cloth lap under the keel; null where they only meet.</summary>
    public ClothLap? Lap { get; init; }
}

/// <summary>Port and starboard cloth lap on the centre line and count twice there.</summary>
/// <param name="WidthMm">Of the lap, half of it on each side of the centre line.</param>
/// <param name="FromMm">The stretch of the hull, x in mm, over which they lap; null for all of it. <paramref name="ToMm"/> likewise.</param>
public sealed record ClothLap(double WidthMm, double? FromMm, double? ToMm);

/// <summary>A layer of diagonal planks.</summary>
/// <param name="WidthMm">Width of the stock, edges straight and parallel.</param>
/// <param name="AngleDegrees">In the surface, between the master plank's own line and the keel where they meet.</param>
/// <param name="MasterMm">x at which the master's own line crosses mid-bottom; null for halfway along.</param>
/// <param name="DriftDegrees">With <see cref="Hold.Width"/>, the most that the angle at the keel may leave AngleDegrees.</param>
/// <param name="GapMm">The widest opening or clash of straight edges that the glue is trusted with.</param>
/// <param name="Stagger">Part of a width by which seams are moved against the layer below on the same diagonal; null for none.</param>
public sealed record PlankLayerSpec(
    string Name,
    double ThicknessMm,
    double WidthMm,
    Heads Heads,
    double AngleDegrees,
    double? MasterMm,
    Hold Hold,
    double DriftDegrees,
    double GapMm,
    double? Stagger
) : LayerSpec(Name, ThicknessMm)
{
    /// <summary>The wood, by its name in the species table; null for the job's own.</summary>
    public string? Species { get; init; }
}

/// <summary>Which way planks run, going outboard from the keel.</summary>
public enum Heads
{
    Aft,
    Forward,
}

/// <summary>What is kept going out from the master plank.</summary>
public enum Hold
{
    Width,
    Angle,
}
