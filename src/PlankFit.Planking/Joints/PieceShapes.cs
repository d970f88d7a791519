using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Building;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Joints;

/// <summary>A plank's shapes divided at its joints.</summary>
internal static class PieceShapes
{
    public static ImmutableArray<PlankPiece> Of(
        JointedShape shape,
        ImmutableArray<JointPlace> places,
        ImmutableArray<PlankJoint> joints
    )
    {
        Plank plank = shape.Plank;
        ImmutableArray<double> lengths = PlankSchemes.Lengths(places, shape.From, shape.To);
        return
        [
            .. Enumerable
                .Range(0, places.Length + 1)
                .Select(i =>
                {
                    JointPlace? inboard = i == 0 ? null : places[i - 1],
                        outboard = i == places.Length ? null : places[i];
                    return new PlankPiece(
                        PieceId.Of(plank.Id, i),
                        Between(plank.FlatNet, inboard, outboard),
                        Between(plank.FlatCut, inboard, outboard),
                        lengths[i],
                        i == 0 ? null : joints[i - 1],
                        i == places.Length ? null : joints[i]
                    );
                }),
        ];
    }

    private static ImmutableArray<Vec2> Between(
        ImmutableArray<Vec2> outline,
        JointPlace? inboard,
        JointPlace? outboard
    )
    {
        List<Vec2> left = [.. outline];
        if (inboard is not null)
        {
            (IReadOnlyList<Vec2> line, Vec2 towards) = End(inboard, inboard.NearMm);
            left = LineClip.Cut(left, line, -1 * towards);
        }

        if (outboard is not null)
        {
            (IReadOnlyList<Vec2> line, Vec2 towards) = End(outboard, outboard.FarMm);
            left = LineClip.Cut(left, line, towards);
        }

        return [.. TidyOutline.Of(left, SawnOutline.TidyMm)];
    }

    /// <summary>The line on which a piece ends, and square to it outboard. At a butt it is the joint's own; at a scarf it is square at the end of the overlap.</summary>
    private static (IReadOnlyList<Vec2> Line, Vec2 Outboard) End(JointPlace place, double reach)
    {
        if (place.CutDegrees != 90)
        {
            Vec2 along = (place.Line[1] - place.Line[0]).Unit();
            return (place.Line, -1 * along.Left());
        }

        return ([new(reach, place.Line[0].Y), new(reach, place.Line[1].Y)], new(1, 0));
    }
}
