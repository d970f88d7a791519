using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Fastenings;

/// <summary>What the fastenings of a bottom are set among, whatever the rules: of every plank its edges, its joints, the timber and the seams under it.</summary>
internal sealed class FasteningGround
{
    private readonly Dictionary<(int Layer, Side Side), LayerGround> layers = [];

    private FasteningGround() { }

    /// <summary>Layers whose port side is starboard's mirror image.</summary>
    private readonly HashSet<int> twins = [];

    public LayerGround Of(PlankLayerPlan layer, Side side) => layers[(layer.Number, side)];

    /// <summary>Whether a layer's planks to port lie on the mirror image of what those to starboard lie on.</summary>
    public bool AreTwins(PlankLayerPlan layer) => twins.Contains(layer.Number);

    /// <param name="before">Of another job: the ground of a layer of which nothing has changed is taken over.</param>
    public static FasteningGround Of(
        Planked planked,
        FramingPlan behind,
        JointPlan joints,
        FasteningGround? before,
        CancellationToken stop
    )
    {
        var ground = new FasteningGround();
        foreach (Side side in new[] { Side.Starboard, Side.Port })
        {
            PlankLayerPlan? below = null;
            foreach (PlankLayerPlan layer in planked.PlankLayers)
            {
                var of = GroundInputs.Of(layer, below, side, behind, joints);
                LayerGround? was = before?.layers.GetValueOrDefault((layer.Number, side));
                if (was is not null && of.AreThose(was.From))
                {
                    ground.layers[(layer.Number, side)] = was;
                    below = layer;
                    continue;
                }

                var skin = SkinBelow.Of(below, side, joints, layer.Of(side).Surface);
                ImmutableArray<Plank> planks = layer.On(side);
                var grounds = new PlankGround[planks.Length];
                Parallel.For(
                    0,
                    planks.Length,
                    new ParallelOptions { CancellationToken = stop },
                    i =>
                        grounds[i] = new(
                            new FramedPlank(planks[i]),
                            behind.On(planks[i].Id),
                            joints.On(planks[i].Id)?.Joints ?? [],
                            skin
                        )
                );
                ground.layers[(layer.Number, side)] = new(grounds, skin, of);
                below = layer;
            }
        }

        ground.twins.UnionWith(
            planked
                .PlankLayers.Where(l =>
                    TwinGrounds.Are(ground.Of(l, Side.Starboard), ground.Of(l, Side.Port))
                )
                .Select(l => l.Number)
        );
        return ground;
    }
}

/// <summary>The planks of one layer and side, and the skin that they lie on.</summary>
/// <param name="From">All that it was made from.</param>
internal sealed record LayerGround(
    IReadOnlyList<PlankGround> Planks,
    SkinBelow Below,
    GroundInputs From
);

/// <summary>All that the ground of a layer is made from.</summary>
/// <param name="Behind">What crosses each of its planks.</param>
/// <param name="Joints">In each of its planks, then in each of those below.</param>
internal sealed record GroundInputs(
    PlankLayerPlan Layer,
    PlankLayerPlan? Below,
    ImmutableArray<ImmutableArray<FramingCrossing>> Behind,
    ImmutableArray<JointedPlank?> Joints
)
{
    public static GroundInputs Of(
        PlankLayerPlan layer,
        PlankLayerPlan? below,
        Side side,
        FramingPlan behind,
        JointPlan joints
    ) =>
        new(
            layer,
            below,
            [.. layer.On(side).Select(p => behind.On(p.Id))],
            [.. layer.On(side).Concat(below?.On(side) ?? []).Select(p => joints.On(p.Id))]
        );

    /// <summary>Planks and crossings must be the very same, joints equal by value.</summary>
    public bool AreThose(GroundInputs before) =>
        ReferenceEquals(Layer, before.Layer)
        && ReferenceEquals(Below, before.Below)
        && Behind.SequenceEqual(before.Behind)
        && SameValue.Are(Joints, before.Joints);
}
