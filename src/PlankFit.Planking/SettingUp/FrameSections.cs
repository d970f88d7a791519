using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.SettingUp;

/// <summary>One frame, mould or transom worked out from the surface.</summary>
internal static class FrameSections
{
    private static readonly double[] Parts = [0, 0.25, 0.5, 0.75, 1];

    /// <summary>How far a topside's lines are shown above the corner, mm.</summary>
    private const double ShownMm = 120;

    /// <summary>Null where the bottom is too narrow there for a frame: the keel's side lies outboard of the chine.</summary>
    public static FrameSection? Of(SettingUpGround ground, FramePlane place)
    {
        SettingUpSpec spec = ground.Spec;
        double thickness = place switch
            {
                { IsTransom: true } => spec.TransomMm ?? spec.FrameMm,
                // Timber that lies behind has its own, as it is snapped, fastened to and sawn.
                { Part: { } part } => part.WidthMm,
                _ => spec.FrameMm,
            },
            offset = ground.Stack.InnerMm - (place.IsTransom ? 0 : spec.RibbandMm);
        SectionCut Cut(double mm) => new(ground.Hull.Surface, mm, place.Plane, place.U);
        FrameFace face = Face(spec, place, Cut(offset));
        double other = face == FrameFace.Forward ? thickness : -thickness;
        if (place.Part is not null)
        {
            // And half of it lies to either side of where the job has it.
            place = place with
            {
                Plane = place.Plane.Moved(-other / 2),
                PositionMm = place.PositionMm - (other / 2 / place.Plane.Aft.X),
            };
        }

        SectionCut table = Cut(0),
            mould = Cut(offset);
        var otherFace = new SectionCut(
            ground.Hull.Surface,
            offset,
            place.Plane.Moved(other),
            place.U
        );
        KeelSideFace innerSide = ground.Layers[0].Side;
        TopsideAt? topside = ground.Topside?.At(table.At(1).U);
        double? chine = topside is { } t
            ? mould.MeetsPlane(
                t.Chine.P + ((ground.TopsideFaces.InnerMm - spec.RibbandMm) * t.Normal),
                t.Normal,
                1
            )
            : 1;
        if (
            mould.MeetsKeel(innerSide) is not { } keel
            || otherFace.MeetsKeel(innerSide) is not { } otherKeel
            || chine is not { } corner
            || !(keel < Math.Min(corner, 1))
        )
        {
            return null;
        }

        (double? begins, double? ends) = Stretch(ground, place);
        if (begins >= (ends ?? corner))
        {
            return null;
        }

        double first = begins ?? 0,
            last = ends ?? 1;
        ImmutableArray<FramePlace> places =
        [
            .. Parts.Select(p =>
                Place(
                    table,
                    mould,
                    otherFace,
                    first + (p * (last - first)),
                    Math.Sign(other),
                    place.Plane
                )
            ),
        ];
        (keel, corner) = (Math.Max(keel, begins ?? keel), Math.Min(corner, ends ?? corner));
        otherKeel = Math.Max(otherKeel, begins ?? otherKeel);
        return new(
            new(
                place.Name,
                place.PositionMm,
                place.IsStation,
                place.IsTransom,
                place.Plane.RakeDegrees
            )
            {
                Only = place.Part?.Only,
                IsStretch = begins is not null || ends is not null,
            },
            face,
            thickness,
            places,
            mould.At(keel).Flat,
            mould.At(corner).Flat,
            Lines(
                ground,
                place,
                Cut,
                mould.Line(keel, corner),
                otherFace.Line(otherKeel, corner),
                topside
            )
        );
    }

    /// <summary>Where a frame that goes only part of the way begins and ends: parts of the way on the planking's inner face, where it is taped from the keel's side.</summary>
    private static (double? From, double? To) Stretch(SettingUpGround ground, FramePlane place)
    {
        if (place.Part is not { } thing)
        {
            return (null, null);
        }

        var face = SectionFace.At(ground.Hull, ground.Stack.InnerMm, ground.Layers[0].Side);
        double? Part(double? outMm)
        {
            if (outMm is not { } mm)
            {
                return null;
            }

            Uv at = face.Out(place.PositionMm, face.KeelAt(place.PositionMm), mm);
            return at.V / ground.Hull.Surface.UpperV(at.U);
        }

        return (
            thing.OutFromMm > 0 ? Part(thing.OutFromMm) : null,
            thing.OutToMm < face.GirthMm(place.PositionMm) ? Part(thing.OutToMm) : null
        );
    }

    /// <summary>The transom's after face is the table's; a frame's is as asked, or the one from which the hull narrows at half its girth.</summary>
    private static FrameFace Face(SettingUpSpec spec, FramePlane place, SectionCut mould)
    {
        if (place.IsTransom)
        {
            return FrameFace.After;
        }

        return spec.Face switch
        {
            FrameFace.ByBevel => mould.At(0.5).Surface.Normal.Dot(place.Plane.Aft) >= 0
                ? FrameFace.Forward
                : FrameFace.After,
            _ => spec.Face,
        };
    }

    private static FramePlace Place(
        SectionCut table,
        SectionCut mould,
        SectionCut otherFace,
        double part,
        int other,
        SectionPlane plane
    )
    {
        SectionSpot drawn = table.At(part);
        (double deduction, double at) = mould.InFrom(drawn.Flat, drawn.Outward, part);
        SectionSpot edge = mould.At(at);
        double bevel = Math.Asin(other * edge.Surface.Normal.Dot(plane.Aft));

        // The other face's plane is the same but for its place, so both lines are seen one on the other.
        (double fall, _) = otherFace.InFrom(edge.Flat, edge.Outward, at);
        return new(part, deduction, bevel * 180 / Math.PI, fall, edge.Flat);
    }

    private static SectionLines Lines(
        SettingUpGround ground,
        FramePlane place,
        Func<double, SectionCut> cut,
        ImmutableArray<Vec2> mould,
        ImmutableArray<Vec2> other,
        TopsideAt? topside
    )
    {
        SectionCut inner = cut(ground.Stack.InnerMm),
            outer = cut(ground.Stack.OuterMm);
        double innerKeel = inner.MeetsKeel(ground.Layers[0].Side) ?? 0,
            outerKeel = outer.MeetsKeel(ground.Layers[^1].Side) ?? 0;
        CornerLines? corner = topside is { } t ? Corner(ground, place, t, mould[^1]) : null;
        return new(
            cut(0).Line(0, 1),
            outer.Line(outerKeel, End(outer, corner?.Joint[0])),
            inner.Line(innerKeel, End(inner, corner?.Joint[1])),
            mould,
            other,
            [
                .. ground.Layers.Select(l =>
                    ImmutableArray.Create(KeelEnd(cut(l.InnerMm), l), KeelEnd(cut(l.OuterMm), l))
                ),
            ],
            place.Plane.Aft.X == 1 ? KeelLayers(ground, place.PositionMm) : []
        )
        {
            Corner = corner,
        };
    }

    private static Vec2 KeelEnd(SectionCut cut, SkinFaces layer) =>
        cut.At(cut.MeetsKeel(layer.Side) ?? 0).Flat;

    /// <summary>The part of the way at which a face ends at the corner.</summary>
    private static double End(SectionCut cut, Vec2? at)
    {
        if (at is not { } corner)
        {
            return 1;
        }

        SectionSpot spot = cut.At(1);
        return 1 + ((corner - spot.Flat).Dot(spot.Run) / spot.Run.Dot(spot.Run));
    }

    /// <summary>Outer faces of the keel's layers, from the middle line to their edges.</summary>
    private static ImmutableArray<ImmutableArray<Vec2>> KeelLayers(
        SettingUpGround ground,
        double x
    ) =>
        [
            .. ground.Keel.Select(k =>
                ImmutableArray.Create(
                    new Vec2(0, k.HeightAt(x)),
                    new Vec2(k.HalfWidthAt(x), k.HeightAt(x))
                )
            ),
        ];

    private static CornerLines Corner(
        SettingUpGround ground,
        FramePlane place,
        TopsideAt topside,
        Vec2 mould
    )
    {
        SectionPlane plane = place.Plane;
        ChineCorner corner = ground.Corner(topside, place.PositionMm);
        Vec2 In(Vec2 p) => plane.Along(topside.Place(p), topside.Along);
        ImmutableArray<Vec2> Of(ImmutableArray<Vec2> line) => [.. line.Select(In)];
        Vec2 across = plane.FlatDirection(topside.Normal),
            up = across.Left().Unit();
        up = up.Y < 0 ? -1 * up : up;
        ImmutableArray<Vec2> From(Vec2 foot) => [foot, foot + (ShownMm * up)];
        return new(
            Of(corner.Joint),
            From(In(corner.Edge.Outer)),
            From(In(corner.Edge.Inner)),
            From(mould),
            Of(corner.Piece),
            Of(corner.Round(ground.Spec.ClothRadiusMm))
        );
    }
}
