using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Keel;
using PlankFit.Planking.Layers;

namespace PlankFit.Planking.Laying;

/// <summary>
/// What was worked out on the way to a bottom's planks, each with all that it was made from: where a job is changed and laid again, what would be made from the same
/// is taken over.
/// </summary>
/// <param name="Asked">The job as it was asked for, before sawn planks turned a layer.</param>
internal sealed record LayWorkings(
    PlankingJob Asked,
    ImmutableArray<LoftedHull> Hulls,
    ImmutableArray<BuiltKeel> Keels,
    ImmutableArray<LaidLayer> Layers
);

/// <summary>A hull, and the job as far as it was made from it.</summary>
internal sealed record LoftedHull(PlankingJob From, HullSurface Hull);

/// <summary>All that a layer is laid by; one of the same inputs is the same layer.</summary>
/// <param name="Job">As far as this layer goes: see <see cref="LayerJob"/>.</param>
/// <param name="Keel">With the hull that it is built on.</param>
/// <param name="Below">The layer against whose seams its own are staggered; null where they are not.</param>
/// <param name="AsDrawn">The layer as it was drawn, where it is laid on the hull as it stands.</param>
internal sealed record LayerInputs(
    PlankingJob Job,
    StackedLayer Layer,
    int Number,
    Side Side,
    BuiltKeel Keel,
    LaidLayer? Below,
    LaidLayer? AsDrawn
)
{
    public PlankLayerSpec Planks => (PlankLayerSpec)Layer.Spec;

    public HullSurface Hull => Keel.Hull;

    /// <param name="below">The next layer below that heads the same way.</param>
    public static LayerInputs Of(
        SideGround ground,
        StackedLayer layer,
        int number,
        LaidLayer? below,
        LaidLayer? asDrawn
    )
    {
        var planks = (PlankLayerSpec)layer.Spec;

        // A layer that is laid as drawn is the same on both sides.
        Side side = asDrawn is null ? Side.Starboard : ground.Side;
        AsBuiltSpec standing = asDrawn is null ? AsBuiltSpec.None : ground.Job.AsBuilt;
        return new(
            LayerJob.Of(ground.Job, planks, number, side, standing),
            layer,
            number,
            side,
            ground.Keel,
            planks.Stagger is null ? null : below,
            asDrawn
        );
    }

    /// <summary>The keel and other layers must be the very same; everything else equal by value.</summary>
    public bool AreThose(LayerInputs before) =>
        ReferenceEquals(Keel, before.Keel)
        && ReferenceEquals(Below, before.Below)
        && ReferenceEquals(AsDrawn, before.AsDrawn)
        && SameValue.Are(
            (Job, Layer, Number, Side),
            (before.Job, before.Layer, before.Number, before.Side)
        );
}
