using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;

namespace PlankFit.Tests.Planking.Joints;

/// <summary>Places for scarfs on the planks of a layer, worked out from the planks' records as the README tells it, and not by the planner.</summary>
internal static class ScarfRooms
{
    public static ImmutableArray<PlankRoom> Of(PlankLayerPlan layer, JointStock stock)
    {
        double overlap = stock.ScarfRatio * layer.Spec.ThicknessMm,
            zero = 0;
        ImmutableArray<PlankRoom>.Builder rooms = ImmutableArray.CreateBuilder<PlankRoom>();
        Plank? last = null;
        foreach (Plank plank in layer.Starboard)
        {
            if (last is not null)
            {
                // Along the layer: the plank's middle, carried to the one before by the surface's own strip coordinates.
                double middle = (plank.FlatNet.Min(p => p.X) + plank.FlatNet.Max(p => p.X)) / 2;
                zero += last.Map.Flat(plank.Map.On(new Vec2(middle, 0))).X - middle;
            }

            last = plank;
            double from = plank.FlatCut.Min(p => p.X),
                to = plank.FlatCut.Max(p => p.X);
            if (to - from <= stock.LongestMm + 1e-6)
            {
                rooms.Add(PlankRoom.Whole);
                continue;
            }

            PlankEdge[] edges =
            [
                .. new[] { plank.ForwardEdge, plank.AfterEdge }.Where(e => e.Exists),
            ];
            double low = edges.Select(e => e.Flat[0].X).DefaultIfEmpty(from).Max(),
                high = edges.Select(e => e.Flat[^1].X).DefaultIfEmpty(to).Min();
            List<double> at = [];
            for (int k = 1; from + (k * stock.GridMm) <= to; k++)
            {
                at.Add(from + (k * stock.GridMm) - (overlap / 2));
            }

            foreach (
                double full in new[]
                {
                    from + stock.LongestMm - (overlap / 2),
                    to - stock.LongestMm + (overlap / 2),
                }
            )
            {
                if (at.All(a => Math.Abs(a - full) > 0.5))
                {
                    at.Add(full);
                }
            }

            rooms.Add(
                new(
                    [
                        .. at.Order()
                            .Where(a => a - (overlap / 2) > low && a + (overlap / 2) < high)
                            .Select(a => new JointPlace(
                                a,
                                90,
                                a + (overlap / 2),
                                a - (overlap / 2),
                                null,
                                false
                            )
                            {
                                AlongMm = a + zero,
                                XMm = plank.Map.Under(new(a, 0)).P.X,
                            }),
                    ],
                    from,
                    to,
                    true
                )
            );
        }

        return rooms.ToImmutable();
    }
}
