using System.Collections.Immutable;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Wood;

namespace PlankFit.Planking.Jobs;

/// <summary>Whether boards are free of knots and run straight in the grain.</summary>
public enum BoardGrade
{
    Clear,
    Knotty,
}

/// <summary>What the planks are made of, and how dry.</summary>
/// <param name="Table">The woods that a layer may name: those that come with the program and those that the job gives.</param>
public sealed record TimberSpec(ImmutableArray<Species> Table)
{
    /// <summary>Of the layers that name none of their own; null where none is named.</summary>
    public string? Species { get; init; }

    /// <summary>Of the wood as it is sawn and laid; null where the job does not say.</summary>
    public MoistureGiven? Workshop { get; init; }

    /// <summary>Of the wood as the boat is used.</summary>
    public MoistureGiven? Service { get; init; }

    /// <summary>Flat-sawn, which moves the more, where the job does not say.</summary>
    public Grain Grain { get; init; } = Grain.Flat;

    public BoardGrade Grade { get; init; } = BoardGrade.Clear;

    /// <summary>Of plywood.</summary>
    public FaceGrain FaceGrain { get; init; } = FaceGrain.Along;

    /// <summary>Between clamps, screws or staples while the glue sets, mm; 300 mm or a foot where the job does not say (a proposal, no source).</summary>
    public double ClampSpacingMm { get; init; } = 300;

    public static readonly TimberSpec Default = new(SpeciesTable.BuiltIn);

    /// <summary>The wood of a layer; null where neither the layer nor the job names one.</summary>
    public Species? Of(PlankLayerSpec layer) =>
        (layer.Species ?? Species) is { } name ? SpeciesTable.Find(Table, name) : null;
}
