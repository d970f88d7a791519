using System.Collections.Immutable;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Timber;
using PlankFit.Planking.Wood;

namespace PlankFit.Planking.Structure;

/// <summary>What stiffness and mass stand on, besides what the job asks of them.</summary>
internal sealed record StructureGround(
    Planked Planked,
    FramingPlan Framing,
    TimberPlan? Timber,
    GluePlan? Glue,
    SheathingPlan? Sheathed
)
{
    /// <summary>What holds planks, as rows of the bill.</summary>
    public ImmutableArray<BillRow> Fastenings { get; init; } = [];

    /// <summary>A cloth as it lies; null where the job does not say what it is cut from.</summary>
    public SheathedLayer? LiesAs(string layer) =>
        Sheathed?.Layers.FirstOrDefault(l => l.Name == layer);

    public ClothSpec? ClothOf(string layer) => LiesAs(layer)?.Cloth;

    public Species? WoodOf(PlankLayerPlan layer) => Planked.Job.Timber?.Of(layer.Planks);
}
