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
    ImmutableArray<ClothSpec> Cloths,
    ImmutableArray<SheathingSpec> Sheathing
)
{
    /// <summary>What holds planks, as rows of the bill.</summary>
    public ImmutableArray<BillRow> Fastenings { get; init; } = [];

    public ClothSpec? ClothOf(string layer) =>
        Sheathing.FirstOrDefault(s => s.Layer == layer) is { } lies
            ? Cloths.FirstOrDefault(c => c.Name == lies.Cloth)
            : null;

    public Species? WoodOf(PlankLayerPlan layer) => Planked.Job.Timber?.Of(layer.Planks);
}
