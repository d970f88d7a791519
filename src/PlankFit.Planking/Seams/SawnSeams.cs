using System.Collections.Immutable;
using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Strips;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Seams;

/// <summary>
/// A layer some of whose planks are sawn: their seams run where they were planned when they were sawn, under their numbers, and the rest is laid on from the
/// outermost of them. Planks between sawn ones share out what room is left.
/// </summary>
internal static class SawnSeams
{
    /// <summary>A seam whose ends lie this near to the record's is the record's, mm.</summary>
    private const double SameMm = 1e-3;

    /// <summary>Further off it is looked for no more, mm.</summary>
    private const double NearMm = 60;

    private const double FootMm = 1e-6;

    /// <summary>Where a fault of the record itself is told.</summary>
    private const string Record = "sawn-planks.json";

    /// <param name="planned">The row as it would be laid with nothing sawn, with its numbers.</param>
    /// <param name="cut">Of this layer and side, in any order. Those that lie nowhere on the bottom are the answer's strays.</param>
    public static SeamRow Row(
        LayerRegion region,
        PlankLayerSpec spec,
        SeamRow planned,
        IReadOnlyList<SawnPlank> cut,
        Tracing tracing
    )
    {
        if (cut.Count == 0 || ArePlanned(region, planned, cut, tracing))
        {
            return planned;
        }

        var traces = new SeamTraces(region, planned, tracing);
        var strays = cut.Select(c => (c.Id, Why: traces.WhyNot(c)))
            .Where(s => s.Why is not null)
            .ToImmutableDictionary(s => s.Id, s => s.Why!);
        SawnPlank[] here = [.. cut.Where(c => !strays.ContainsKey(c.Id))];
        return here.Length == 0
            ? planned with
            {
                Strays = strays,
            }
            : LaidOn(region, spec, planned, here, traces, tracing) with
            {
                Strays = strays,
            };
    }

    private static SeamRow LaidOn(
        LayerRegion region,
        PlankLayerSpec spec,
        SeamRow planned,
        SawnPlank[] cut,
        SeamTraces traces,
        Tracing tracing
    )
    {
        int? masterSawn = cut.FirstOrDefault(c => c.Form.Kind == PlankKind.Master)?.Number;
        var known = new SortedDictionary<int, Seam>();
        foreach (
            (int number, (Vec3, Vec3) at) in Ends(
                cut,
                masterSawn ?? planned.Master + planned.FirstNumber
            )
        )
        {
            known[number] = traces.Of(at)!;
        }

        Between(region, spec, known, tracing);
        (int first, int last) = (known.Keys.First(), known.Keys.Last());
        bool foreCorner = cut.Any(c => c.Number == first && !c.Shape.Forward.Exists),
            afterCorner = cut.Any(c => c.Number == last + 1 && !c.Shape.After.Exists);
        (List<Seam> ahead, List<int> taperedAhead) = foreCorner
            ? ([], [])
            : SeamFamily.March(region, spec, known[first], -1, tracing);
        (List<Seam> behind, List<int> taperedBehind) = afterCorner
            ? ([], [])
            : SeamFamily.March(region, spec, known[last], 1, tracing);
        ahead.Reverse();
        int firstNumber = first - ahead.Count;
        ImmutableArray<Seam> seams = [.. ahead, .. known.Values, .. behind];
        return new(
            seams,
            masterSawn is { } m
                ? Math.Clamp(m - firstNumber, 1, Math.Max(1, seams.Length - 1))
                : NearestTo(region, planned, seams),
            [
                .. taperedAhead.Select(k => ahead.Count + 1 - k),
                .. taperedBehind.Select(k => ahead.Count + (last - first) + k),
            ],
            planned.ShiftMm
        )
        {
            FirstNumber = firstNumber,
        };
    }

    /// <summary>The plank that lies where the master was planned.</summary>
    private static int NearestTo(LayerRegion region, SeamRow planned, ImmutableArray<Seam> seams)
    {
        double Middle(ImmutableArray<Seam> row, int plank) =>
            MiddleX(region, row[plank - 1]) + MiddleX(region, row[plank]);
        double wanted = Middle(planned.Seams, planned.Master);
        return seams.Length < 2
            ? 1
            : Enumerable.Range(1, seams.Length - 1).MinBy(k => Math.Abs(Middle(seams, k) - wanted));
    }

    /// <summary>Whether every seam of sawn planks lies where the row as laid with nothing sawn has it.</summary>
    public static bool ArePlanned(
        LayerRegion region,
        SeamRow planned,
        IReadOnlyList<SawnPlank> cut,
        Tracing tracing
    ) =>
        Ends(cut, planned.Master + planned.FirstNumber)
            .All(e => IsPlanned(region, planned, e.Key, e.Value, tracing));

    /// <summary>By the number of the plank whose after seam it is. Of two records of one seam the plank further from the master was sawn to the other.</summary>
    private static SortedDictionary<int, (Vec3 Inboard, Vec3 Outboard)> Ends(
        IReadOnlyList<SawnPlank> cut,
        int master
    )
    {
        var ends = new SortedDictionary<int, (Vec3, Vec3)>();
        foreach (SawnPlank plank in cut.OrderBy(c => Math.Abs(c.Number - master)))
        {
            foreach (bool after in new[] { false, true })
            {
                if (plank.SeamEnds(after) is { } at)
                {
                    ends[after ? plank.Number : plank.Number - 1] = at;
                }
            }
        }

        return ends;
    }

    /// <summary>Square across the planned seam: where along it the edges of the bottom cut it off says nothing of the seam.</summary>
    private static bool IsPlanned(
        LayerRegion region,
        SeamRow planned,
        int number,
        (Vec3 Inboard, Vec3 Outboard) at,
        Tracing tracing
    )
    {
        int index = number - planned.FirstNumber;
        if (index < 0 || index >= planned.Seams.Length)
        {
            return false;
        }

        Seam seam = planned.Seams[index];
        var strip = new FermiStrip(seam.Line, tracing.PerpendicularStepMm);
        bool On(Vec3 point, EdgeCrossing near) =>
            region.PointAt(near.Uv).ChordTo(point) < SameMm
            || (
                region.PointAt(near.Uv).ChordTo(point) < NearMm
                && ClosestPoint.TryFind(
                    region.Surface,
                    point,
                    near.Uv,
                    FootMm,
                    out ClosestPoint.Result foot
                )
                && Math.Abs(foot.HeightMm) < NearMm
                && Across(strip, foot, near.S) < SameMm
            );
        return On(at.Inboard, seam.In) && On(at.Outboard, seam.Out);
    }

    /// <summary>How far a foot lies square across a line; without end where it lies abreast of none of it.</summary>
    private static double Across(FermiStrip strip, ClosestPoint.Result foot, double nearS)
    {
        try
        {
            return Math.Abs(strip.Find(foot.Uv, foot.Foot.P, new(nearS, 0), FootMm).T);
        }
        catch (GeodesicException)
        {
            return double.PositiveInfinity;
        }
    }

    /// <summary>Seams between two that are known, evenly apart.</summary>
    private static void Between(
        LayerRegion region,
        PlankLayerSpec spec,
        SortedDictionary<int, Seam> known,
        Tracing tracing
    )
    {
        int[] numbers = [.. known.Keys];
        foreach ((int low, int high) in numbers.Zip(numbers.Skip(1)))
        {
            // Along the mean of their ends: forward is the lesser number.
            if (MiddleX(region, known[low]) >= MiddleX(region, known[high]))
            {
                throw new JobFaultException(
                    Record,
                    $"in layer {spec.Name} the after seam of plank {high} lies forward of that of plank {low}: the record has planks of two lay-outs; take those that are wrong off it with --forget"
                )
                {
                    IsOfTheRecord = true,
                };
            }

            for (int k = low + 1; k < high; k++)
            {
                double part = (double)(k - low) / (high - low);
                known[k] =
                    Abreast(region, spec, known[low], known[high], part, tracing)
                    ?? ThroughEdges(region, known[low], known[high], part, tracing)
                    ?? throw new JobFaultException(
                        $"layer {spec.Name}",
                        $"no seam runs between plank {low} and plank {high + 1}, which are sawn"
                    );
            }
        }
    }

    private static Seam? Abreast(
        LayerRegion region,
        PlankLayerSpec spec,
        Seam low,
        Seam high,
        double part,
        Tracing tracing
    )
    {
        try
        {
            return Crossings.Find(region, SeamFamily.Abreast(region, low, high, part, tracing));
        }
        catch (GeodesicException)
        {
            // So far apart, or one so short, that it lies nowhere abreast of the other.
            return null;
        }
    }

    /// <summary>The seam between two others that takes its part of their room along the edges of the bottom.</summary>
    private static Seam? ThroughEdges(
        LayerRegion region,
        Seam low,
        Seam high,
        double part,
        Tracing tracing
    )
    {
        Uv On(EdgeCrossing from, EdgeCrossing to)
        {
            // The shorter way about: laps run from 0 to 4.
            double way = to.Lap - from.Lap;
            way -= 4 * Math.Round(way / 4);
            double lap = from.Lap + (part * way);
            lap -= 4 * Math.Floor(lap / 4);
            return region.OnLap(lap, LayerRegion.EdgeOfLap(lap));
        }

        Uv a = On(low.In, high.In),
            b = On(low.Out, high.Out);
        return SeamThrough.Of(region, region.PointAt(a), region.PointAt(b), a, b, tracing);
    }

    private static double MiddleX(LayerRegion region, Seam seam) =>
        region.PointAt(seam.In.Uv).X + region.PointAt(seam.Out.Uv).X;
}
