using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Layers;

namespace PlankFit.Planking.Joints;

/// <summary>From the ways chosen for a layer to its joints and pieces.</summary>
internal static class LayerJoints
{
    public static JointedLayer Of(
        LayerCase layer,
        ImmutableArray<JointRule> rules,
        SchemeChoice choice,
        int leastPieces
    )
    {
        JointId Id(int plank, int joint) => new(layer.Planks[plank].Plank.Id, joint);
        ImmutableArray<JointedPlank>.Builder planks = ImmutableArray.CreateBuilder<JointedPlank>();
        for (int i = 0; i < choice.Ways.Length; i++)
        {
            JointScheme way = choice.Ways[i];
            if (way.Joints.IsEmpty)
            {
                continue;
            }

            PlankCase plank = layer.Planks[i];
            ImmutableArray<PlankJoint> joints =
            [
                .. way.Joints.Select(
                    (place, k) =>
                        Joint(
                            layer,
                            plank.Shape,
                            place,
                            Id(i, k),
                            JointDistances.Of(layer, choice.Ways, Id, rules, i, place)
                        )
                ),
            ];
            planks.Add(
                new(plank.Plank.Id, joints, PieceShapes.Of(plank.Shape, way.Joints, joints))
            );
        }

        return new(
            layer.Layer.Number,
            layer.Side,
            layer.Stock,
            rules,
            planks.ToImmutable(),
            choice.WasteMm,
            leastPieces - choice.Ways.Count(w => w.Joints.IsEmpty),
            choice.Complete
        );
    }

    private static PlankJoint Joint(
        LayerCase layer,
        JointedShape shape,
        JointPlace place,
        JointId id,
        ImmutableArray<JointDistance> distances
    )
    {
        JointStock stock = layer.Stock;
        if (stock.Kind == JointKind.Butt)
        {
            return new(
                id,
                JointKind.Butt,
                place.AtMm,
                place.CutDegrees,
                place.Backing,
                null,
                new(place.Line, place.Line),
                distances
            );
        }

        ImmutableArray<Vec2> near = shape.Across(place.NearMm, 90)!.Value,
            far = shape.Across(place.FarMm, 90)!.Value;

        // The feather edge on the outer face points aft: the piece that lies forward reaches further there.
        bool inboardOnOuter = layer.Layer.Planks.Heads == Heads.Aft;
        return new(
            id,
            JointKind.Scarf,
            place.AtMm,
            90,
            null,
            new(stock.ScarfRatio, layer.JointMm, inboardOnOuter),
            inboardOnOuter ? new(far, near) : new(near, far),
            distances
        );
    }
}
