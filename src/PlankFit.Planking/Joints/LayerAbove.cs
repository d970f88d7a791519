using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Joints;

/// <summary>Joints of a layer as those of the layer below it see them: where these may lie so as to be clear of them.</summary>
internal static class LayerAbove
{
    /// <summary>The layer below with the places left out that are nearer than asked to the joints of the layer above, measured as <see cref="LayerBelow"/> does.</summary>
    public static LayerCase ClearOf(
        LayerCase lower,
        LayerCase upper,
        ImmutableArray<JointScheme> above,
        double distanceMm
    )
    {
        double gap = upper.Layer.NeutralOffsetMm - lower.Layer.NeutralOffsetMm;
        (Vec3 A, Vec3 B)[] joints =
        [
            .. above.SelectMany(
                (way, i) =>
                    way.Joints.Select(j =>
                        (
                            upper.Planks[i].Plank.Map.Under(j.Line[0]).P,
                            upper.Planks[i].Plank.Map.Under(j.Line[1]).P
                        )
                    )
            ),
        ];
        return lower with
        {
            Planks =
            [
                .. lower.Planks.Select(p =>
                    p with
                    {
                        Places = [.. p.Places.Where(seen => IsClear(p.Plank, seen.Place))],
                    }
                ),
            ],
        };

        bool IsClear(Plank plank, JointPlace place)
        {
            Vec3 a = Raised(plank, place.Line[0]),
                b = Raised(plank, place.Line[1]);
            return joints.All(j => SegmentDistance.Between(j.A, j.B, a, b) >= distanceMm);
        }

        Vec3 Raised(Plank plank, Vec2 flat)
        {
            SurfacePoint under = plank.Map.Under(flat);
            return under.P + (gap * under.Normal);
        }
    }
}
