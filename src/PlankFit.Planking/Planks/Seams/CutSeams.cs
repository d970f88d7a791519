using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>
/// A layer some of whose planks are sawn: their seams run where they were planned when they were sawn, under their numbers, and the rest is laid on from the
/// outermost of them. Planks between sawn ones share out what room is left.
/// </summary>
internal static class CutSeams
{
    /// <summary>A seam whose ends lie this near to the record's is the record's, mm.</summary>
    private const double SameMm = 1e-3;

    /// <summary>Further off it is looked for no more, mm.</summary>
    private const double NearMm = 60;

    private const double FootMm = 1e-6;

    /// <param name="planned">The row as it would be laid with nothing sawn, with its numbers.</param>
    /// <param name="cut">Of this layer and side, in any order.</param>
    public static SeamRow Row(
        LayerRegion region,
        PlankLayerSpec spec,
        SeamRow planned,
        IReadOnlyList<CutPlank> cut,
        Tracing tracing
    )
    {
        int master =
            cut.FirstOrDefault(c => c.Sizes.Kind == PlankKind.Master)?.Number
            ?? planned.Master + planned.FirstNumber;
        SortedDictionary<int, (Vec3 Inboard, Vec3 Outboard)> ends = Ends(cut, master);

        // Numbers of which the lay-out knows none are another lay-out's: whoever looks for those planks will not find them, and says so.
        bool any = cut.Any(c =>
            c.Number >= planned.FirstNumber && c.Number < planned.FirstNumber + planned.Planks
        );
        if (!any || ends.All(e => IsPlanned(region, planned, e.Key, e.Value, tracing)))
        {
            return planned;
        }

        var known = new SortedDictionary<int, Seam>();
        foreach ((int number, (Vec3, Vec3) at) in ends)
        {
            known[number] = Traced(region, planned, at, cut[0].Layer, number, tracing);
        }

        Between(region, spec, known, tracing);
        (int first, int last) = (known.Keys.First(), known.Keys.Last());
        bool foreCorner = cut.Any(c => c.Number == first && c.ForwardSeam.IsEmpty),
            afterCorner = cut.Any(c => c.Number == last + 1 && c.AfterSeam.IsEmpty);
        (List<Seam> ahead, List<int> taperedAhead) = foreCorner
            ? ([], [])
            : SeamFamily.March(region, spec, known[first], -1, tracing);
        (List<Seam> behind, List<int> taperedBehind) = afterCorner
            ? ([], [])
            : SeamFamily.March(region, spec, known[last], 1, tracing);
        ahead.Reverse();
        int firstNumber = first - ahead.Count,
            seams = ahead.Count + known.Count + behind.Count;
        return new(
            [.. ahead, .. known.Values, .. behind],
            Math.Clamp(master - firstNumber, 1, Math.Max(1, seams - 1)),
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

    /// <summary>Whether every seam of sawn planks lies where the row as laid with nothing sawn has it.</summary>
    public static bool ArePlanned(
        LayerRegion region,
        SeamRow planned,
        IReadOnlyList<CutPlank> cut,
        Tracing tracing
    ) =>
        Ends(cut, planned.Master + planned.FirstNumber)
            .All(e => IsPlanned(region, planned, e.Key, e.Value, tracing));

    /// <summary>By the number of the plank whose after seam it is. Of two records of one seam the plank further from the master was sawn to the other.</summary>
    private static SortedDictionary<int, (Vec3 Inboard, Vec3 Outboard)> Ends(
        IReadOnlyList<CutPlank> cut,
        int master
    )
    {
        var ends = new SortedDictionary<int, (Vec3, Vec3)>();
        foreach (CutPlank plank in cut.OrderBy(c => Math.Abs(c.Number - master)))
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
                && Math.Abs(strip.Find(foot.Uv, foot.Foot.P, new(near.S, 0), FootMm).T) < SameMm
            );
        return On(at.Inboard, seam.In) && On(at.Outboard, seam.Out);
    }

    private static Seam Traced(
        LayerRegion region,
        SeamRow planned,
        (Vec3 Inboard, Vec3 Outboard) at,
        int layer,
        int number,
        Tracing tracing
    )
    {
        (Vec3 a, Vec3 b) = at;
        Uv nearA = planned.Seams.MinBy(s => region.PointAt(s.In.Uv).ChordTo(a))!.In.Uv,
            nearB = planned.Seams.MinBy(s => region.PointAt(s.Out.Uv).ChordTo(b))!.Out.Uv;
        return SeamThrough.Of(region, a, b, nearA, nearB, tracing)
            ?? throw new JobFaultException(
                "cut-planks.json",
                $"the after seam of plank {number} in layer {layer}, as it was when the plank was sawn, does not lie on the bottom as the job now has it: is the record this hull's?"
            );
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
                    "cut-planks.json",
                    $"in layer {spec.Name} the after seam of plank {high} lies forward of that of plank {low}: the record has planks of two lay-outs; take those that are wrong off it with --forget"
                );
            }

            for (int k = low + 1; k < high; k++)
            {
                known[k] =
                    Crossings.Find(
                        region,
                        SeamFamily.Abreast(
                            region,
                            known[low],
                            known[high],
                            (double)(k - low) / (high - low),
                            tracing
                        )
                    )
                    ?? throw new JobFaultException(
                        $"layer {spec.Name}",
                        $"no seam runs between plank {low} and plank {high + 1}, which are sawn: look at cut-planks.json"
                    );
            }
        }
    }

    private static double MiddleX(LayerRegion region, Seam seam) =>
        region.PointAt(seam.In.Uv).X + region.PointAt(seam.Out.Uv).X;
}
