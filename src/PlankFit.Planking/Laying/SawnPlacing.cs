using System.Collections.Immutable;
using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Laying;

/// <summary>How a sawn plank lies in the flat coordinates of the place that it has now: the ends of its edges on their feet, as well as a plank that does not stretch can.</summary>
internal static class SawnPlacing
{
    private const double FootMm = 1e-6;

    /// <param name="surface">Of the layer as it now is, in the starboard frame.</param>
    /// <returns>Null where an end has no foot near the place.</returns>
    public static FlatShift? Of(SawnPlank sawn, Plank place, ISurface surface)
    {
        List<Vec2> from = [],
            to = [];
        foreach (
            (ImmutableArray<Vec3> seam, ImmutableArray<Vec2> flat) in new[]
            {
                (sawn.Shape.Forward.Seam, sawn.Shape.Forward.Flat),
                (sawn.Shape.After.Seam, sawn.Shape.After.Flat),
            }
        )
        {
            if (seam.IsEmpty)
            {
                continue;
            }

            foreach ((Vec3 point, Vec2 at) in new[] { (seam[0], flat[0]), (seam[^1], flat[^1]) })
            {
                if (Foot(place, surface, point) is not { } foot)
                {
                    return null;
                }

                from.Add(at);
                to.Add(foot);
            }
        }

        return FlatShift.Between(from, to);
    }

    private static Vec2? Foot(Plank place, ISurface surface, Vec3 point)
    {
        int near = Enumerable
            .Range(0, place.Outline.Length)
            .MinBy(i => place.Outline[i].ChordTo(point));
        Vec3 inFrame = place.Side == Side.Port ? point.MirroredInY() : point;
        if (
            !ClosestPoint.TryFind(
                surface,
                inFrame,
                place.Map.On(place.FlatNet[near]),
                FootMm,
                out ClosestPoint.Result foot
            )
        )
        {
            return null;
        }

        try
        {
            return place.Map.Flat(foot.Uv, place.FlatNet[near]);
        }
        catch (GeodesicException)
        {
            return null;
        }
    }
}
