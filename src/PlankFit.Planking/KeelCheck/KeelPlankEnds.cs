using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Keel;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.KeelCheck;

/// <summary>What a keel that is wider or narrower than its mitre does to the planks that meet it.</summary>
internal static class KeelPlankEnds
{
    public static IEnumerable<KeelPlankEnd> Of(Planked planked, KeelLayerStanding keel, Side side)
    {
        PlankLayerPlan layer = planked.PlankLayers.First(l => l.Planks.Name == keel.Spec.Meets);
        foreach (Plank plank in layer.On(side))
        {
            foreach (PlankEnd end in plank.Ends.Where(e => e.At == PanelEdge.Lower))
            {
                yield return Of(keel, plank, end);
            }
        }
    }

    private static KeelPlankEnd Of(KeelLayerStanding keel, Plank plank, PlankEnd end)
    {
        Vec2 middle = 0.5 * (end.NetLine[0] + end.NetLine[^1]);
        SurfacePoint at = plank.Map.Under(middle);
        double x = at.P.X;

        // A side at the mitre differs from the one there in place, athwart, and in how fast it widens.
        Vec3 there = keel.SideGradient(at, keel.HalfWidthSlopeAt(x)),
            mitred = keel.SideGradient(at, keel.WantedSlopeAt(x));
        double moved = keel.HalfWidthAt(x) - keel.WantedAt(x);
        double turned = Turned(at.Normal.Cross(mitred), at.Normal.Cross(there), at.Normal);
        return new(
            plank.Id,
            x,
            -moved / plank.Map.Grain(middle).Dot(mitred),
            end.CutDegrees,
            end.BevelDegrees
        )
        {
            CutChangeDegrees = (plank.Side == Side.Starboard ? 1 : -1) * turned * 180 / Math.PI,
        };
    }

    /// <summary>The angle from one direction to another, counter-clockwise about an axis that points to the eye.</summary>
    private static double Turned(Vec3 from, Vec3 to, Vec3 axis) =>
        Math.Atan2(from.Cross(to).Dot(axis), from.Dot(to));
}
