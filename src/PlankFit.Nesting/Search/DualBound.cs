namespace PlankFit.Nesting;

/// <summary>
/// A value below which no plan in rows can come, from any worth of things (Lagrange and Farley, from memory): all things together are worth so much, and no board can
/// yield more than the dearest that lies in it, of which it pays its own cost.
/// </summary>
internal static class DualBound
{
    /// <param name="items">What each thing is worth, nought or more.</param>
    /// <param name="strips">By kind: no row of that length is worth more.</param>
    public static double Of(
        NestProblem problem,
        Share share,
        double[] items,
        Func<int, double, double> strips
    )
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
                double most = problem.Lanes[b].AtMost((c, l) => strips(problem.Kind(c, sort), l));
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

        return best;
    }
}
