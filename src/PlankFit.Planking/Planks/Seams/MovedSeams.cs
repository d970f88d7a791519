using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>Seams that lie off their plan: in proportion between those that were measured, and as far off as the last one beyond them.</summary>
internal static class MovedSeams
{
    /// <summary>
    /// Planks between the master, if that is fitted, and a measured one are fitted as well: what was not measured there is taken to lie in proportion between what was, and the master's
    /// own two seams, where they were not measured, where they were drawn.
    /// </summary>
    public static void Between(
        LayerRegion region,
        SeamRow planned,
        SortedDictionary<int, FittedSeam> actual,
        bool fromMaster,
        Tracing tracing
    )
    {
        foreach (int own in fromMaster ? new[] { planned.Master - 1, planned.Master } : [])
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

    /// <summary>Fitted or sawn planks past the outermost measured seam keep their width: their seams are off by as much as that one.</summary>
    public static void Carried(
        LayerRegion region,
        SeamRow planned,
        SortedDictionary<int, FittedSeam> actual,
        IReadOnlySet<int> fixedPlanks,
        bool fromMaster,
        Tracing tracing
    )
    {
        (int first, int last) = (actual.Keys.First(), actual.Keys.Last());
        int[] indices = [.. fixedPlanks.Select(n => n - planned.FirstNumber)];
        IEnumerable<int> aft = last < planned.Master
                ? []
                : Enumerable.Range(last + 1, Math.Max(0, indices.Append(last).Max() - last)),
            forward = fromMaster && first >= planned.Master
                ? []
                : Enumerable.Range(0, first).Where(k => k >= indices.Append(first + 1).Min() - 1);
        foreach (int k in aft.Where(k => k < planned.Seams.Length).Concat(forward).ToArray())
        {
            FittedSeam off = actual[k > last ? last : first];
            Seam seam =
                Moved(region, planned.Seams[k], off.AtKeelMm, off.AtChineMm, tracing)
                ?? throw new JobFaultException(
                    "measured.csv",
                    $"plank {k + planned.FirstNumber}, which is fitted or sawn, would be carried off the bottom by what was measured of its neighbours: measure again"
                );
            actual[k] = off with { Seam = seam };
        }
    }

    /// <summary>The geodesic that lies so far from a planned seam, square across, at its keel end and at its chine end.</summary>
    public static Seam? Moved(
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
}

/// <summary>A seam that is fitted, and how far it lies from where it was planned, square across, at either end, mm.</summary>
internal readonly record struct FittedSeam(Seam Seam, double AtKeelMm, double AtChineMm);
