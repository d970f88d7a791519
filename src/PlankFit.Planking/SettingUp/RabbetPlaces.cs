using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.SettingUp;

/// <summary>The keel's rabbet at a section: where the planking's faces meet the keel's side, and where the inner one leaves the backbone.</summary>
internal static class RabbetPlaces
{
    /// <summary>Null where the faces do not meet the keel there.</summary>
    public static RabbetPlace? Of(SettingUpGround ground, FramePlane place)
    {
        SectionCut outer = new(ground.Hull.Surface, ground.Stack.OuterMm, place.Plane, place.U),
            inner = new(ground.Hull.Surface, ground.Stack.InnerMm, place.Plane, place.U);
        if (
            outer.MeetsKeel(ground.Layers[^1].Side) is not { } rabbet
            || inner.MeetsKeel(ground.Layers[0].Side) is not { } middle
            || Math.Max(rabbet, middle) > 1
        )
        {
            return null;
        }

        Vec2 line = outer.At(rabbet).Flat;
        SectionSpot bottom = inner.At(middle);
        double? landing =
            ground.Backbone is { } backbone ? inner.MeetsKeel(backbone)
            // Planks let into the keel square to themselves: their inner face comes out of its plumb side, straight in from the rabbet line.
            : ground.Layers[0].Side.SquareToPlank
                ? inner.MeetsPlane(place.Plane.Point(line), Vec3.UnitY, rabbet)
            : null;
        Vec2? bearding =
            landing is { } part && part > middle && part < 1 ? inner.At(part).Flat : null;
        return new(
            place.Label,
            place.PositionMm,
            line,
            bottom.Flat,
            bearding,
            line.ChordTo(bottom.Flat),
            bearding?.ChordTo(bottom.Flat),
            Math.Atan2(bottom.Outward.X, -bottom.Outward.Y) * 180 / Math.PI
        );
    }
}
