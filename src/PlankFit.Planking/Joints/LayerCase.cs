using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Joints;

/// <summary>A place for a joint with what lies under it.</summary>
internal sealed record SeenPlace(
    JointPlace Place,
    (JointId Id, double Mm)? JointBelow,
    (SeamId Id, double Mm)? SeamBelow
)
{
    /// <summary>Whether it keeps the rules about the layer below.</summary>
    public bool Keeps(ImmutableArray<JointRule> rules) =>
        rules.All(r =>
            r.What switch
            {
                JointRuleKind.JointsBelow => !(JointBelow?.Mm < r.DistanceMm),
                JointRuleKind.SeamsBelow => !(SeamBelow?.Mm < r.DistanceMm),
                _ => true,
            }
        );
}

/// <summary>A plank of the layer: its places for joints where it is longer than the stock, none where it is not.</summary>
/// <param name="LeastJoints">The fewest joints that its length and its places allow; null where none do, 0 for a plank that the stock is long enough for.</param>
internal sealed record PlankCase(
    JointedShape Shape,
    ImmutableArray<SeenPlace> Places,
    int? LeastJoints
)
{
    public Plank Plank => Shape.Plank;

    /// <summary>Whether no place is lost to the joints of the layer below.</summary>
    public bool IsFreeBelow(ImmutableArray<JointRule> rules) =>
        Places.All(p => p.Keeps(rules.RemoveAll(r => r.What != JointRuleKind.JointsBelow)));

    /// <summary>What the search for joints needs of it: the places that keep the rules about the layer below.</summary>
    public PlankRoom Room(ImmutableArray<JointRule> rules) =>
        LeastJoints is null or 0
            ? PlankRoom.Whole
            : new(
                [.. Places.Where(p => p.Keeps(rules)).Select(p => p.Place)],
                Shape.From,
                Shape.To,
                true
            );
}

/// <summary>All that is known of a layer and side before its joints are chosen.</summary>
internal sealed record LayerCase(
    PlankLayerPlan Layer,
    Side Side,
    JointStock Stock,
    ImmutableArray<PlankCase> Planks
)
{
    /// <summary>Length of a scarf's overlap, mm; 0 for butts.</summary>
    public double JointMm => Stock.JointMm(Layer.Spec.ThicknessMm);

    public static LayerCase Of(
        FramingPlan behind,
        PlankLayerPlan layer,
        Side side,
        JointStock stock,
        (PlankLayerPlan Layer, JointedLayer? Pieced)? below
    )
    {
        ImmutableArray<Plank> planks = layer.On(side);
        LayerBelow? under = below is { } b ? LayerBelow.Of(b.Layer, layer, side, b.Pieced) : null;
        var scale = DiagonalScale.Of(planks);
        double jointMm = stock.JointMm(layer.Spec.ThicknessMm);
        return new(
            layer,
            side,
            stock,
            [
                .. planks.Select(
                    (plank, i) =>
                    {
                        var shape = new JointedShape(plank);
                        if (shape.To - shape.From <= stock.LongestMm + 1e-6)
                        {
                            return new PlankCase(shape, [], 0);
                        }

                        ImmutableArray<JointPlace> places =
                        [
                            .. JointPlaces
                                .Of(
                                    shape,
                                    stock,
                                    jointMm,
                                    behind.On(plank.Id),
                                    below?.Layer.Spec.Name
                                )
                                .Select(p => p with { AlongMm = scale.Along(i, p.AtMm) }),
                        ];
                        return new(
                            shape,
                            [.. places.Select(p => Seen(p, plank, under))],
                            PlankSchemes.LeastJoints(new(places, shape.From, shape.To, true), stock)
                        );
                    }
                ),
            ]
        );
    }

    private static SeenPlace Seen(JointPlace place, Plank plank, LayerBelow? below)
    {
        if (below is null)
        {
            return new(place, null, null);
        }

        Vec3 a = plank.Map.Under(place.Line[0]).P,
            b = plank.Map.Under(place.Line[1]).P;
        return new(place, below.NearestJoint(a, b), below.NearestSeam(a, b));
    }
}
