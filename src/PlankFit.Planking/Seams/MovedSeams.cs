using PlankFit.Geometry.Geodesics;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Seams;

/// <summary>Seams that lie off their plan: in proportion between those that were measured, and as far from one another as planned beyond them.</summary>
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

    /// <summary>Fitted or sawn planks past the outermost measured seam keep their width, one beside the other.</summary>
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
        int farAft = Math.Min(indices.Append(last).Max(), planned.Seams.Length - 1),
            farForward = Math.Max(indices.Append(first + 1).Min() - 1, 0);
        if (!fromMaster || last >= planned.Master)
        {
            for (int k = last + 1; k <= farAft; k++)
            {
                actual[k] = Beside(region, planned, actual[k - 1].Seam, k - 1, k, tracing);
            }
        }

        if (!fromMaster || first < planned.Master)
        {
            for (int k = first - 1; k >= farForward; k--)
            {
                actual[k] = Beside(region, planned, actual[k + 1].Seam, k + 1, k, tracing);
            }
        }
    }

    /// <summary>The seam that lies as far from a neighbour as it was planned to, square across, all along.</summary>
    private static FittedSeam Beside(
        LayerRegion region,
        SeamRow planned,
        Seam from,
        int fromIndex,
        int index,
        Tracing tracing
    )
    {
        Seam then = planned.Seams[fromIndex];
        Neighbour across = SeamFamily.Measured(
            region,
            then,
            planned.Seams[index],
            out double middle
        );
        double Planned(double s) =>
            across.At(
                then.Line.At(Math.Clamp(s - from.In.S + then.In.S, then.Line.From, then.Line.To))
            );
        double foot = Math.Clamp(middle - then.In.S + from.In.S, from.Line.From, from.Line.To);
        Geodesic line = Neighbours.Trace(
            region,
            from.Line,
            Neighbours.Fit(from.Line, from.In.S, from.Out.S, Planned),
            foot,
            tracing
        );
        Seam seam =
            Crossings.Find(region, line)
            ?? throw new JobFaultException(
                "measured.csv",
                $"plank {Math.Max(index, fromIndex) + planned.FirstNumber}, which is fitted or sawn, would be carried off the bottom by what was measured of its neighbours: measure again"
            );
        return new(seam, 0, 0);
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

/// <summary>A seam that is fitted, and how far it lies from where it was planned, square across, at either end, mm; nought where it is only carried along.</summary>
internal readonly record struct FittedSeam(Seam Seam, double AtKeelMm, double AtChineMm);
