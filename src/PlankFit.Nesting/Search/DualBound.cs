namespace PlankFit.Nesting;

/// <summary>
/// A value below which no plan in rows can come, from any worth of things (Lagrange and Farley, from memory): all things together are worth so much, and no board can
/// yield more than the dearest that lies in it, of which it pays its own cost.
/// </summary>
internal static class DualBound
{
    /// <param name="items">What each thing is worth, nought or more.</param>
    /// <param name="rows">At these worths.</param>
    public static double Of(NestProblem problem, Share share, double[] items, DearestRows rows)
    {
        double all = 0;
        for (int i = 0; i < items.Length; i++)
        {
            all += share.Items[i] * items[i];
        }

        var yields = new List<(double Yield, double Cost, int Count)>();
        for (int b = 0; b < problem.Boards.Length; b++)
        {
            if (share.Boards[b] > 0)
            {
                int sort = problem.Boards[b].Sort;
                double most = problem
                    .Lanes[b]
                    .AtMost(
                        (c, band, length) =>
                        {
                            int kind = problem.Kind(c, sort),
                                j = problem.Bucket(kind, length);
                            BandAtMost most = rows.AtMost[kind][band];
                            return j < 0 ? most.Beyond : most.Lengths[j];
                        }
                    );
                yields.Add((most, problem.Boards[b].Cost, share.Boards[b]));
            }
        }

        // Worths may all be made smaller by the same part; the best part is where some board just pays, or all of it.
        double best = 0;
        foreach (
            double part in yields
                .Where(y => y.Yield > 0)
                .Select(y => Math.Min(1, y.Cost / y.Yield))
                .Append(1)
                .Distinct()
        )
        {
            double bound =
                (part * all) - yields.Sum(y => y.Count * Math.Max(0, (part * y.Yield) - y.Cost));
            best = Math.Max(best, bound);
        }

        return best * (1 - Slack);
    }

    /// <summary>The next sum that costs of boards can make, where they have a common measure.</summary>
    public static double Raised(NestProblem problem, double bound) =>
        Measure(problem) is not { } measure
            ? bound
            : measure * Math.Ceiling((bound / measure * (1 - Slack)) - Slack);

    /// <summary>All costs are whole multiples of it; null where they are not whole numbers.</summary>
    public static long? Measure(NestProblem problem)
    {
        long measure = 0;
        foreach (BoardType board in problem.Boards)
        {
            long whole = (long)Math.Round(board.Cost);
            if (whole == 0 || Math.Abs(whole - board.Cost) > 1e-6)
            {
                return null;
            }

            measure = (long)System.Numerics.BigInteger.GreatestCommonDivisor(measure, whole);
        }

        return measure;
    }

    /// <summary>What doubles and the solver's own tolerances may have added to a bound, as a part of it.</summary>
    private const double Slack = 1e-6;
}
