using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Planks;

public abstract record LayerPlan(LayerSpec Spec);

public sealed record ClothLayerPlan(ClothLayerSpec Cloth) : LayerPlan(Cloth);

/// <summary>A layer's mid-thickness surface.</summary>
/// <param name="OffsetMm">From the table's surface, along the outward normal.</param>
public sealed record LayerMiddle(double OffsetMm, ISurface Surface);

/// <summary>The plank that a layer is laid out from.</summary>
/// <param name="ShiftMm">By how much it was moved (aft positive) to avoid a sliver at a corner.</param>
/// <param name="AskedMm">The x at which the job has it cross the middle of its panel, mm.</param>
public readonly record struct MasterPlank(int Number, double ShiftMm, double AskedMm);

/// <param name="Number">Counts plank layers only, from 1, from the inside out.</param>
/// <param name="AreaMm2">Of the layer's region, one side, on its mid-thickness surface.</param>
/// <param name="Outline">The region's boundary in space, starboard, counter-clockwise seen from outside.</param>
public sealed record PlankLayerPlan(
    int Number,
    PlankLayerSpec Planks,
    LayerMiddle Middle,
    double AreaMm2,
    MasterPlank Master,
    ImmutableArray<Vec3> Outline,
    ImmutableArray<Plank> Starboard,
    ImmutableArray<Plank> Port
) : LayerPlan(Planks)
{
    public double NeutralOffsetMm => Middle.OffsetMm;

    public ISurface Surface => Middle.Surface;

    public int MasterNumber => Master.Number;

    public double MasterShiftMm => Master.ShiftMm;

    /// <summary>The panel that it covers.</summary>
    public required Panel Panel { get; init; }

    /// <summary>The number, after the panel's letter where it has one: 1, or T1.</summary>
    public string Code => string.Create(CultureInfo.InvariantCulture, $"{Panel.Letter}{Number}");

    /// <summary>What a tape should read for the master plank, the first, the last and every fifth, both sides.</summary>
    public ImmutableArray<SeamCheck> Checks { get; init; } = [];

    /// <summary>Sawn planks of this layer that lie nowhere on it, by id, and what is amiss.</summary>
    internal ImmutableDictionary<PlankId, Func<LengthUnit, string>> Strays { get; init; } =
        ImmutableDictionary<PlankId, Func<LengthUnit, string>>.Empty;

    /// <summary>The port side's own plan, in the starboard frame, where the two sides were measured apart; null where they are mirror images.</summary>
    public PlankLayerPlan? PortApart { get; init; }

    /// <summary>The plan that holds on a side, in the starboard frame: its surface, outline, area and master.</summary>
    public PlankLayerPlan Of(Side side) => side == Side.Port ? PortApart ?? this : this;

    public ImmutableArray<Plank> On(Side side) => side == Side.Starboard ? Starboard : Port;
}
