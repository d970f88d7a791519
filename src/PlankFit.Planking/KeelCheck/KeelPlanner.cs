using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Keel;
using PlankFit.Planking.Laying;

namespace PlankFit.Planking.KeelCheck;

/// <summary>Holds the keel that is there against the planking that meets it.</summary>
internal static class KeelPlanner
{
    /// <summary>Spacing of the rows between stations, mm: chords of this length keep within 0.01 mm of an edge that leaves its mitre by 2 mm in 300.</summary>
    private const double EveryMm = 25;

    /// <summary>Rows on the ramp at a lap's end.</summary>
    private const int RampRows = 30;

    public static KeelPlan Of(Planked planked, CancellationToken stop)
    {
        PlankingJob job = planked.Job;
        Side[] sides = [Side.Starboard, Side.Port];
        ImmutableArray<KeelLayerPlan>.Builder layers =
            ImmutableArray.CreateBuilder<KeelLayerPlan>();
        for (int i = 0; i < job.Keel.Layers.Length; i++)
        {
            stop.ThrowIfCancellationRequested();
            KeelLayerSpec spec = job.Keel.Layers[i];
            int at = i;
            layers.Add(
                new(
                    spec,
                    [
                        .. sides.SelectMany(s =>
                            AtStations(planked, planked.KeelOf(s).Layers[at], s)
                        ),
                    ],
                    [.. sides.SelectMany(s => Between(planked, planked.KeelOf(s).Layers[at], s))],
                    [
                        .. sides.SelectMany(s =>
                            KeelPlankEnds.Of(planked, planked.KeelOf(s).Layers[at], s)
                        ),
                    ]
                )
                {
                    RunsOutAtMm = KeelRunsOut.At(
                        job.Keel,
                        planked.Hull,
                        planked.StarboardKeel.Layers[at]
                    ),
                }
            );
        }

        ImmutableArray<KeelCapStation> cap =
        [
            .. sides.SelectMany(s => KeelCap.Of(job, planked.HullOf(s), s)),
        ];
        var held = new KeelPlan(layers.ToImmutable(), cap, []);
        return held with { Findings = [.. KeelFindings.Of(planked, held)] };
    }

    private static IEnumerable<KeelStation> AtStations(
        Planked planked,
        KeelLayerStanding layer,
        Side side
    )
    {
        bool Measured(string station) =>
            planked.Job.AsBuilt.KeelHalfWidths.Any(m =>
                m.Layer == layer.Spec.Name && m.Station == station && m.Side == side
            );
        return Rows(
            layer,
            side,
            planked
                .HullOf(side)
                .Stations.Select(s => (s.Name, s.PositionMm, Measured: Measured(s.Name)))
        );
    }

    private static IEnumerable<KeelStation> Between(
        Planked planked,
        KeelLayerStanding layer,
        Side side
    )
    {
        ImmutableArray<StationOnHull> stations = planked.HullOf(side).Stations;
        return Rows(
            layer,
            side,
            Places(planked.Job, stations[0].PositionMm, stations[^1].PositionMm)
                .Select(x => ("", x, false))
        );
    }

    /// <summary>Evenly along the hull, and closer on the ramps where a cloth's lap ends.</summary>
    private static IEnumerable<double> Places(PlankingJob job, double from, double to)
    {
        int n = Math.Max(2, (int)Math.Ceiling((to - from) / EveryMm));
        IEnumerable<double> even = Enumerable
            .Range(0, n + 1)
            .Select(i => from + ((to - from) * i / n));
        IEnumerable<double> ramps = KeelLaps
            .Ends(job)
            .SelectMany(x =>
                Enumerable
                    .Range(0, RampRows + 1)
                    .Select(i => x + (KeelStack.LapRampMm * (((double)i / RampRows) - 0.5)))
            )
            .Where(x => x > from && x < to);
        double last = double.NegativeInfinity;
        foreach (double x in even.Concat(ramps).Order())
        {
            if (x > last + 0.01)
            {
                yield return x;
                last = x;
            }
        }
    }

    /// <summary>Rows going aft; lengths along the face are summed from one to the next.</summary>
    private static IEnumerable<KeelStation> Rows(
        KeelLayerStanding layer,
        Side side,
        IEnumerable<(string Station, double X, bool Measured)> places
    )
    {
        double along = 0;
        double? before = null;
        foreach ((string station, double x, bool measured) in places)
        {
            along += before is { } b ? layer.AlongFaceMm(b, x) : 0;
            before = x;
            if (Row(layer, station, x, side, measured) is { } row)
            {
                yield return row with
                {
                    AlongMm = along,
                };
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
            new(
                Degrees(deadrise),
                Degrees(slope),
                layer.Spec.Side switch
                {
                    KeelLayerSide.Leaning(var lean) => lean,
                    KeelLayerSide.SquareToPlank => Degrees(
                        Deadrise((layer.PlanksOver(x, half) ?? at).Surface.Normal)
                    ),
                    _ => 0,
                },
                layer.Spec.Side is KeelLayerSide.SquareToPlank
                    ? 0
                    : Degrees(Math.Asin(Math.Clamp(end.Dot(at.Surface.Normal), -1, 1)))
            ),
            wanted,
            half,
            (half - wanted) * Math.Tan(deadrise),
            measured
        )
        {
            HeightMm = layer.HeightAt(x),
        };
    }

    private static double Deadrise(Vec3 normal) => Math.Atan2(normal.Y, -normal.Z);

    private static double Degrees(double radians) => radians * 180 / Math.PI;
}
