using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Keel;

/// <summary>The keel of one side, built up beside the stack: which of its layers each layer of planks meets.</summary>
/// <param name="Job">As far as faces go: see <see cref="FacesJob"/>.</param>
/// <param name="Layers">From the inside out; empty where the job names no keel layer and the planks meet the table's keel line.</param>
internal sealed record BuiltKeel(
    PlankingJob Job,
    HullSurface Hull,
    ImmutableArray<KeelLayerStanding> Layers
)
{
    /// <param name="before">Keels worked out before; one that would be the same is taken over.</param>
    public static BuiltKeel Of(
        PlankingJob job,
        HullSurface hull,
        Side side,
        IEnumerable<BuiltKeel>? before = null
    )
    {
        PlankingJob faces = FacesJob.Of(job, side);
        return before?.FirstOrDefault(k =>
                ReferenceEquals(k.Hull, hull) && SameValue.Are(k.Job, faces)
            )
            ?? new(faces, hull, KeelStack.Of(faces, hull, side));
    }

    /// <summary>The side that the planks of a layer are cut to.</summary>
    public KeelSideFace SideOf(PlankLayerSpec planks) =>
        Met(planks)?.Side ?? KeelSides.OfTable(Job, Hull);

    /// <summary>Where it runs out under a layer of planks; null where they meet their keel layer all along.</summary>
    public KeelRunOut? RunOutUnder(PlankLayerSpec planks) =>
        Met(planks) is { } keel && KeelRunsOut.At(Job.Keel, Hull, keel) is { } x
            ? new(x, Job.Keel.LeftLongMm)
            : null;

    /// <summary>The keel layer that names the planks' layer; the first one, carried on, where none does; null where there is none.</summary>
    private KeelLayerStanding? Met(PlankLayerSpec planks) =>
        Layers.FirstOrDefault(k => k.Spec.Meets == planks.Name) ?? Layers.FirstOrDefault();
}
