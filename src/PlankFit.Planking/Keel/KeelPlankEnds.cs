using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>What a keel that is wider or narrower than its mitre does to the planks that meet it.</summary>
internal static class KeelPlankEnds
{
    public static IEnumerable<KeelPlankEnd> Of(BottomPlan plan, KeelLayerStanding keel, Side side)
    {
        PlankLayerPlan layer = plan.PlankLayers.First(l => l.Planks.Name == keel.Planks.Name);
        foreach (Plank plank in layer.On(side))
        {
            foreach (PlankEnd end in plank.Ends.Where(e => e.At == HullEdge.Keel))
            {
                Vec2 middle = 0.5 * (end.NetLine[0] + end.NetLine[^1]);
                SurfacePoint at = plank.Map.Under(middle);
                double x = at.P.X;
                Vec3 normal = new Vec3(-keel.HalfWidthSlopeAt(x), 1, 0).Unit();

                // The side moves square to itself by so much; along the plank's own line that is so much more.
                double moved = (keel.HalfWidthAt(x) - keel.WantedAt(x)) * normal.Y;
                double along = plank.Map.Grain(middle).Dot(normal);
                yield return new(plank.Id, x, -moved / along, end.CutDegrees, end.BevelDegrees);
            }
        }
    }
}
