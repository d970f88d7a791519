using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Keel;

/// <summary>The keel's layers one on the other, on one side, in the starboard frame.</summary>
internal static class KeelStack
{
    /// <summary>Nodes a bay: enough that the ramp at a lap's end rings by less than 0.001 mm.</summary>
    private const int NodesABay = 40;

    /// <summary>
    /// At a lap's end the cloth's second thickness is taken up over this length, mm: nobody planes a step of a millimetre into a keel. A proposal, no source.
    /// </summary>
    public const double LapRampMm = 300;

    private const double MeetMm = 1e-9;

    public static ImmutableArray<KeelLayerStanding> Of(PlankingJob job, HullSurface hull, Side side)
    {
        if (job.Keel.Layers.IsEmpty)
        {
            return [];
        }

        LoftedSurface table = hull.Surface;
        var stack = Stack.Of(job);
        KeelProfile profile = Profile(job, hull);
        ImmutableArray<KeelLayerStanding>.Builder standing =
            ImmutableArray.CreateBuilder<KeelLayerStanding>();
        double timber = 0;
        foreach (KeelLayerSpec spec in job.Keel.Layers)
        {
            timber += spec.ThicknessMm;
            int index = PlankLayer(job, spec);
            var outer = new ParallelSurface(table, stack.Layers[index].OuterMm);
            Func<double, double> above = Above(timber, job.Layers.Take(index));
            var face = new KeelFaceLine(profile, above);
            KeelEdgeCurve wanted = Wanted(table, outer, face);
            KeelEdgeCurve design = spec.HalfWidth switch
            {
                KeelHalfWidth.Line(var name) => OfLine(job.Offsets, name),
                KeelHalfWidth.Tapered(var forward, var aft) => Straight(hull, forward, aft),
                _ => wanted,
            };
            standing.Add(
                new(
                    spec,
                    outer,
                    table,
                    face,
                    wanted,
                    design.Measured(Measured(job, hull, spec, side))
                )
            );
        }

        return standing.ToImmutable();
    }

    /// <summary>The whole keel and all cloth against the whole planking and all cloth.</summary>
    public static KeelFinish Finished(PlankingJob job, HullSurface hull)
    {
        double timber = job.Keel.Layers.Sum(k => k.ThicknessMm);
        var face = new KeelFaceLine(Profile(job, hull), Above(timber, job.Layers));
        var bottom = new ParallelSurface(hull.Surface, Stack.Of(job).OuterMm);
        return new(bottom, Wanted(hull.Surface, bottom, face));
    }

    private static KeelProfile Profile(PlankingJob job, HullSurface hull)
    {
        var inner = new ParallelSurface(hull.Surface, Stack.Of(job).InnerMm);
        return KeelProfile.At(
            hull.Surface,
            inner,
            KeelFace.Trace(hull.Surface, inner, KeelSides.OfTable(job, hull), 200)
        );
    }

    /// <summary>How thick so much timber and the cloths among these layers are on the keel, at x.</summary>
    private static Func<double, double> Above(double timberMm, IEnumerable<LayerSpec> layers)
    {
        ClothLayerSpec[] cloths = [.. layers.OfType<ClothLayerSpec>()],
            lapped = [.. cloths.Where(c => c.Lap is not null)];
        double everywhere = timberMm + cloths.Where(c => c.Lap is null).Sum(c => c.ThicknessMm);
        return x =>
        {
            double sum = everywhere;
            foreach (ClothLayerSpec cloth in lapped)
            {
                sum += Lapped(cloth, cloth.Lap!, x);
            }

            return sum;
        };
    }

    /// <summary>The thickness of a cloth on the keel at x: twice where port and starboard lap.</summary>
    private static double Lapped(ClothLayerSpec cloth, ClothLap lap, double x)
    {
        double inside = Math.Min(
            x - (lap.FromMm ?? double.NegativeInfinity),
            (lap.ToMm ?? double.PositiveInfinity) - x
        );

        // Half of the ramp inside the lap, half outside.
        double t = Math.Clamp((inside / LapRampMm) + 0.5, 0, 1);
        return cloth.ThicknessMm * (1 + (t * t * t * (10 + (t * ((6 * t) - 15)))));
    }

    /// <summary>Where the planks' outer face meets the layer's, station by station and between.</summary>
    private static KeelEdgeCurve Wanted(LoftedSurface table, ISurface outer, KeelFaceLine face)
    {
        var x = new List<double>();
        var y = new List<double>();
        IReadOnlyList<double> stations = table.StationU;
        double v = 0;
        for (int bay = 0; bay + 1 < stations.Count; bay++)
        {
            int last = bay + 2 == stations.Count ? NodesABay : NodesABay - 1;
            for (int i = 0; i <= last; i++)
            {
                double u = stations[bay] + ((stations[bay + 1] - stations[bay]) * i / NodesABay);
                if (Meet(outer, u, v, face) is not { } met)
                {
                    continue;
                }

                v = met.V;
                Vec3 p = outer.At(u, v).P;
                if (x.Count == 0 || p.X > x[^1] + 1e-6)
                {
                    x.Add(p.X);
                    y.Add(p.Y);
                }
            }
        }

        return x.Count >= 4
            ? KeelEdgeCurve.Through(x, y)
            : throw new JobFaultException(
                "keel",
                "the planks' outer face nowhere meets the keel layer's outer face: the bottom is flat at the keel, or the layer is far thicker than the planks; give its half-width as a line of the offsets"
            );
    }

    /// <summary>The v at which the outer face of the planks has the height of the keel layer's outer face, by Newton with a bounded step; null where it has none near.</summary>
    private static Uv? Meet(ISurface outer, double u, double guess, KeelFaceLine face)
    {
        double v = guess;
        for (int i = 0; i < 40; i++)
        {
            SurfacePoint p = outer.At(u, v);
            double miss = p.P.Z - face.HeightAt(p.P.X),
                rate = p.Dv.Z - (face.SlopeAt(p.P.X) * p.Dv.X);
            double step = miss / rate;

            // Never further than 100 mm a step, and never folded back through the centre line.
            double mm = Math.Abs(step) * p.Dv.Norm;
            v -= mm > 100 ? step * 100 / mm : step;
            if (Math.Abs(miss) < MeetMm)
            {
                return p.P.Y > 0 ? new(u, v) : null;
            }
        }

        return null;
    }

    /// <summary>Straight from the first station of the bottom to the last.</summary>
    private static KeelEdgeCurve Straight(HullSurface hull, double forward, double aft)
    {
        double from = hull.Stations[0].PositionMm,
            length = hull.Stations[^1].PositionMm - from;
        double[] part = [0, 0.2, 0.4, 0.6, 0.8, 1];
        return KeelEdgeCurve.Through(
            [.. part.Select(p => from + (p * length))],
            [.. part.Select(p => forward + (p * (aft - forward)))]
        );
    }

    private static KeelEdgeCurve OfLine(OffsetTable table, string name)
    {
        OffsetLine line = table.Named(name);
        var x = new List<double>();
        var y = new List<double>();
        for (int i = 0; i < table.Stations.Length; i++)
        {
            if (line.HalfBreadthsMm[i] is { } half)
            {
                double? own = line.PositionsMm.IsDefaultOrEmpty ? null : line.PositionsMm[i];
                x.Add(own ?? table.Stations[i].PositionMm);
                y.Add(half);
            }
        }

        return KeelEdgeCurve.Through(x, y);
    }

    /// <summary>The place in the job's layers of the plank layer that a keel layer names.</summary>
    private static int PlankLayer(PlankingJob job, KeelLayerSpec spec)
    {
        for (int i = 0; i < job.Layers.Length; i++)
        {
            if (job.Layers[i] is PlankLayerSpec p && p.Name == spec.Meets)
            {
                return i;
            }
        }

        throw new ArgumentException(
            $"keel layer '{spec.Name}' meets '{spec.Meets}', which is no layer of planks",
            nameof(spec)
        );
    }

    private static IReadOnlyList<(double X, double Y)> Measured(
        PlankingJob job,
        HullSurface hull,
        KeelLayerSpec spec,
        Side side
    ) =>
        [
            .. job
                .AsBuilt.KeelHalfWidths.Where(m => m.Layer == spec.Name && m.Side == side)
                .SelectMany(m =>
                    hull.Stations.Where(s => s.Name == m.Station).Select(s => (s.PositionMm, m.Mm))
                )
                .OrderBy(m => m.PositionMm),
        ];
}
