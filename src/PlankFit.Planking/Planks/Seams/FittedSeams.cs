using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>
/// A layer laid on from planks that are fitted already: their seams lie where they were measured, and the rest is marched outward from the last of them.
/// </summary>
internal static class FittedSeams
{
    /// <summary>The seam is brought to both readings within this, mm.</summary>
    private const double WithinMm = 1e-4;

    /// <param name="planned">The row as it would be laid with nothing fitted, with its numbers.</param>
    /// <param name="measured">Of this layer and side.</param>
    /// <param name="from">The station from which seams were measured.</param>
    public static SeamRow Relaid(
        LayerFaces faces,
        PlankLayerSpec spec,
        SeamRow planned,
        IReadOnlyList<MeasuredSeam> measured,
        StationOnHull from,
        Tracing tracing
    )
    {
        var actual = new SortedDictionary<int, FittedSeam>();
        foreach (IGrouping<string, MeasuredSeam> plank in measured.GroupBy(m => m.PlankId))
        {
            int index = NumberOf(plank.Key) - planned.FirstNumber;
            if (index < 0 || index >= planned.Seams.Length)
            {
                throw new JobFaultException(
                    plank.Key,
                    $"the job as it stands has no after seam of this plank: layer {spec.Name} runs from number {planned.FirstNumber} to {planned.FirstNumber + planned.Planks - 1}, the last without one; look at measured.csv"
                );
            }

            actual[index] = Through(
                faces,
                spec,
                planned.Seams[index],
                plank.Key,
                plank.FirstOrDefault(m => m.At == HullEdge.Keel)?.Mm,
                plank.FirstOrDefault(m => m.At == HullEdge.Chine)?.Mm,
                from,
                tracing
            );
        }

        if (actual.Count == 0)
        {
            return planned;
        }

        int first = actual.Keys.First(),
            last = actual.Keys.Last();
        Between(faces.Middle, planned, actual, tracing);
        first = actual.Keys.First();
        last = actual.Keys.Last();

        // Outward from the last fitted edge on either side of the master; a side on which nothing was measured keeps its plan.
        bool forward = first < planned.Master,
            aft = last >= planned.Master;
        LayerRegion region = faces.Middle;
        (List<Seam> ahead, List<int> taperedAhead) = forward
            ? SeamFamily.March(region, spec, actual[first].Seam, -1, tracing)
            : (
                [.. planned.Seams.Take(first).Reverse()],
                [.. planned.Tapered.Where(k => k <= first).Select(k => first + 1 - k)]
            );
        (List<Seam> behind, List<int> taperedBehind) = aft
            ? SeamFamily.March(region, spec, actual[last].Seam, 1, tracing)
            : (
                [.. planned.Seams.Skip(last + 1)],
                [.. planned.Tapered.Where(k => k > last).Select(k => k - last)]
            );
        ahead.Reverse();
        int moved = ahead.Count - first;
        IEnumerable<int> between = planned.Tapered.Where(k => k > first && k <= last);
        return new(
            [.. ahead, .. actual.Values.Select(f => f.Seam), .. behind],
            planned.Master + moved,
            [
                .. taperedAhead.Select(k => ahead.Count + 1 - k),
                .. between.Select(k => k + moved),
                .. taperedBehind.Select(k => ahead.Count + (last - first) + k),
            ],
            planned.ShiftMm
        )
        {
            FirstNumber = planned.FirstNumber - moved,
            Fitted = [.. actual.Keys.Skip(1).Select(k => k + moved)],
        };
    }

    /// <summary>
    /// Planks between the master and a measured one are fitted as well: what was not measured there is taken to lie in proportion between what was, and the master's
    /// own two seams, where they were not measured, where they were drawn.
    /// </summary>
    private static void Between(
        LayerRegion region,
        SeamRow planned,
        SortedDictionary<int, FittedSeam> actual,
        Tracing tracing
    )
    {
        foreach (int own in new[] { planned.Master - 1, planned.Master })
        {
            bool beyond =
                own < planned.Master ? actual.Keys.First() < own : actual.Keys.Last() > own;
            if (own >= 0 && own < planned.Seams.Length && beyond && !actual.ContainsKey(own))
            {
                actual[own] = new(planned.Seams[own], 0, 0);
            }
        }

        int[] known = [.. actual.Keys];
        foreach ((int low, int high) in known.Zip(known.Skip(1)))
        {
            for (int k = low + 1; k < high; k++)
            {
                double part = (double)(k - low) / (high - low);
                double p =
                        actual[low].AtKeelMm
                        + (part * (actual[high].AtKeelMm - actual[low].AtKeelMm)),
                    q =
                        actual[low].AtChineMm
                        + (part * (actual[high].AtChineMm - actual[low].AtChineMm));
                actual[k] = new(
                    Moved(region, planned.Seams[k], p, q, tracing)
                        ?? throw new JobFaultException(
                            "measured.csv",
                            "a seam between two that were measured passes the bottom by: measure again"
                        ),
                    p,
                    q
                );
            }
        }
    }

    /// <summary>The geodesic that lies so far from a planned seam, square across, at its keel end and at its chine end.</summary>
    private static Seam? Moved(
        LayerRegion region,
        Seam planned,
        double atKeelMm,
        double atChineMm,
        Tracing tracing
    )
    {
        GeodesicPoint a = planned.Line.At(planned.In.S),
            b = planned.Line.At(planned.Out.S);
        double det = (a.A * b.B) - (b.A * a.B);
        var n = new Neighbour(
            ((b.B * atKeelMm) - (a.B * atChineMm)) / det,
            ((a.A * atChineMm) - (b.A * atKeelMm)) / det
        );
        return Crossings.Find(
            region,
            Neighbours.Trace(region, planned.Line, n, planned.MiddleS, tracing)
        );
    }

    /// <summary>The number of a plank, from its id.</summary>
    public static int NumberOf(string id) =>
        int.Parse(
            id.AsSpan(id.IndexOf('-') + 1),
            System.Globalization.CultureInfo.InvariantCulture
        );

    /// <summary>
    /// The geodesic near a planned seam that a tape finds where it was measured: two unknowns, its distance from the planned one at either end, by Newton with
    /// differences; with one reading alone it keeps the planned seam's run.
    /// </summary>
    private static FittedSeam Through(
        LayerFaces faces,
        PlankLayerSpec spec,
        Seam planned,
        string id,
        double? keelMm,
        double? chineMm,
        StationOnHull from,
        Tracing tracing
    )
    {
        Seam At(double atKeel, double atChine) =>
            Moved(faces.Middle, planned, atKeel, atChine, tracing) ?? throw Nowhere(id, spec);

        double Read(Seam seam, HullEdge edge) =>
            TapeReadings.AlongEdge(faces, from, seam, edge) ?? throw NotThere(id, edge);

        double Miss(Seam seam, HullEdge edge, double? wanted) => Read(seam, edge) - wanted!.Value;

        double p = 0,
            q = 0;
        Seam now = planned;
        for (int i = 0; i < 12; i++)
        {
            const double step = 0.5;
            double missK = keelMm is null ? 0 : Miss(now, HullEdge.Keel, keelMm),
                missC = chineMm is null ? 0 : Miss(now, HullEdge.Chine, chineMm);
            if (i == 0)
            {
                CheckPlausible(spec, id, missK, missC);
            }

            if (Math.Abs(missK) < WithinMm && Math.Abs(missC) < WithinMm)
            {
                return new(now, p, q);
            }

            if (keelMm is null || chineMm is null)
            {
                HullEdge edge = keelMm is null ? HullEdge.Chine : HullEdge.Keel;
                double rate = (Read(At(p + step, q + step), edge) - Read(now, edge)) / step;
                double move = -(keelMm is null ? missC : missK) / rate;
                (p, q) = (p + move, q + move);
            }
            else
            {
                Seam dp = At(p + step, q),
                    dq = At(p, q + step);
                double kp = (Read(dp, HullEdge.Keel) - Read(now, HullEdge.Keel)) / step,
                    cp = (Read(dp, HullEdge.Chine) - Read(now, HullEdge.Chine)) / step,
                    kq = (Read(dq, HullEdge.Keel) - Read(now, HullEdge.Keel)) / step,
                    cq = (Read(dq, HullEdge.Chine) - Read(now, HullEdge.Chine)) / step;
                double jacobian = (kp * cq) - (kq * cp);
                p -= ((cq * missK) - (kq * missC)) / jacobian;
                q -= ((kp * missC) - (cp * missK)) / jacobian;
            }

            now = At(p, q);
        }

        throw new JobFaultException(
            id,
            "no straight edge runs through both places where its seam was measured: measure again"
        );
    }

    /// <summary>A seam further off than half a plank is another plank's.</summary>
    private static void CheckPlausible(PlankLayerSpec spec, string id, double missK, double missC)
    {
        double most = Math.Max(Math.Abs(missK), Math.Abs(missC));
        if (most > spec.WidthMm / 2)
        {
            throw new JobFaultException(
                id,
                $"its after seam as measured is {most:0} mm from where it was planned, more than half a plank: is it this plank's, and measured from the right station?"
            );
        }
    }

    private static JobFaultException Nowhere(string id, PlankLayerSpec spec) =>
        new(id, $"the seam as measured passes the bottom of layer {spec.Name} by: measure again");

    private static JobFaultException NotThere(string id, HullEdge edge) =>
        new(
            id,
            $"its after seam does not cross the {edge.ToString().ToLowerInvariant()}, but was measured there: look at measured.csv"
        );
}

/// <summary>A seam that is fitted, and how far it lies from where it was planned, square across, at either end, mm.</summary>
internal readonly record struct FittedSeam(Seam Seam, double AtKeelMm, double AtChineMm);
