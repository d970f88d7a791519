using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>Holds the keel that is there against the planking that meets it.</summary>
internal static class KeelPlanner
{
    /// <summary>Spacing of the rows between stations, mm.</summary>
    private const double EveryMm = 50;

    public static KeelPlan? Of(BottomPlan plan, CancellationToken stop)
    {
        Job job = plan.Job;
        if (job.Keel.Layers.IsEmpty)
        {
            return null;
        }

        Side[] sides = [Side.Starboard, Side.Port];
        var stacks = sides.ToDictionary(s => s, s => KeelStack.Of(job, plan.HullOf(s), s));
        var layers = ImmutableArray.CreateBuilder<KeelLayerPlan>();
        for (int i = 0; i < job.Keel.Layers.Length; i++)
        {
            stop.ThrowIfCancellationRequested();
            KeelLayerSpec spec = job.Keel.Layers[i];
            int at = i;
            layers.Add(
                new(
                    spec,
                    [.. sides.SelectMany(s => AtStations(plan, stacks[s][at], s))],
                    [.. sides.SelectMany(s => Between(plan, stacks[s][at], s))],
                    [.. sides.SelectMany(s => KeelPlankEnds.Of(plan, stacks[s][at], s))]
                )
                {
                    FadesAtMm = KeelFades.At(job.Keel, plan.Hull, stacks[Side.Starboard][at]),
                }
            );
        }

        ImmutableArray<KeelCapStation> cap =
        [
            .. sides.SelectMany(s => KeelCap.Of(job, plan.HullOf(s), s)),
        ];
        var held = new KeelPlan(layers.ToImmutable(), cap, []);
        return held with { Findings = [.. KeelFindings.Of(plan, held)] };
    }

    private static IEnumerable<KeelStation> AtStations(
        BottomPlan plan,
        KeelLayerStanding layer,
        Side side
    )
    {
        HullSurface hull = plan.HullOf(side);
        foreach (StationOnHull station in hull.Stations)
        {
            bool measured = plan.Job.Standing.KeelHalfWidths.Any(m =>
                m.Layer == layer.Spec.Name && m.Station == station.Name && m.Side == side
            );
            if (Row(layer, station.Name, station.PositionMm, side, measured) is { } row)
            {
                yield return row;
            }
        }
    }

    private static IEnumerable<KeelStation> Between(
        BottomPlan plan,
        KeelLayerStanding layer,
        Side side
    )
    {
        ImmutableArray<StationOnHull> stations = plan.HullOf(side).Stations;
        double from = stations[0].PositionMm,
            to = stations[^1].PositionMm;
        int n = Math.Max(2, (int)Math.Ceiling((to - from) / EveryMm));
        for (int i = 0; i <= n; i++)
        {
            if (Row(layer, "", from + ((to - from) * i / n), side, false) is { } row)
            {
                yield return row;
            }
        }
    }

    private static KeelStation? Row(
        KeelLayerStanding layer,
        string station,
        double x,
        Side side,
        bool measured
    )
    {
        double wanted = layer.WantedAt(x),
            half = layer.HalfWidthAt(x);
        if (layer.PlanksOver(x, wanted) is not { } at)
        {
            return null;
        }

        double deadrise = Math.Atan2(at.SlopeAcross, 1),
            slope = Math.Atan(layer.FaceSlopeAt(x));
        Vec3 end = layer.SideNormal(at.Surface);
        return new(
            station,
            x,
            side,
            Degrees(deadrise),
            Degrees(slope),
            wanted,
            half,
            (half - wanted) * Math.Tan(deadrise),
            layer.Spec.Side switch
            {
                KeelLayerSide.Leaning(var lean) => lean,
                KeelLayerSide.SquareToPlank => Degrees(
                    Math.Atan2(at.Surface.Normal.Y, -at.Surface.Normal.Z)
                ),
                _ => 0,
            },
            layer.Spec.Side is KeelLayerSide.SquareToPlank
                ? 0
                : Degrees(Math.Asin(Math.Clamp(end.Dot(at.Surface.Normal), -1, 1))),
            measured
        )
        {
            AlongMm = layer.AlongFaceMm(x),
        };
    }

    private static double Degrees(double radians) => radians * 180 / Math.PI;
}
