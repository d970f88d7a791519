using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Fastenings;

/// <summary>Where the spacing along a timber cannot be kept, and why.</summary>
internal static class TimberGaps
{
    public static IEnumerable<TimberGap> Of(TimberRun run, FasteningRule rule, int layer, Side side)
    {
        List<TimberStop> stops = run.Stops;
        foreach ((double from, double to) in RunSpacing.Wide(run, rule))
        {
            (double spare, Obstacle what, double asks) = Tightest(run, rule, from, to);
            yield return new(
                layer,
                side,
                run.Name,
                to - from,
                stops.FindLast(s => s.AlongMm <= from)?.On.PlankId,
                stops.Find(s => s.AlongMm >= to)?.On.PlankId,
                new(what, Math.Max(0, spare + asks), asks)
            );
        }
    }

    /// <summary>The best of the places that would do: within the spacing of both fastenings, where there are such; else between them and not too near to either.</summary>
    private static (double SpareMm, Obstacle What, double AsksMm) Tightest(
        TimberRun run,
        FasteningRule rule,
        double from,
        double to
    )
    {
        double low = Math.Max(from, to - rule.SpacingMm),
            high = Math.Min(to, from + rule.SpacingMm);
        if (low >= high)
        {
            double apart = Math.Min(RunSpacing.Apart(rule), (to - from) / 3);
            (low, high) = (from + apart, to - apart);
        }

        return run
            .Stretches.Where(s => s.FromMm < high && s.ToMm > low)
            .Select(s =>
                s.On.Tightest(
                    run.On(s.On, Math.Max(low, s.FromMm)),
                    run.On(s.On, Math.Min(high, s.ToMm))
                )
            )
            .DefaultIfEmpty((0, (Obstacle)"the seam", 0))
            .MaxBy(t => t.Item1);
    }
}
