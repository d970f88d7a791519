using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Fastenings;

/// <summary>
/// Keeps the spacing along a timber across the seams of its planks: where two fastenings are further apart, one is set between them where there is a free place,
/// on the middle or beside it; else the two are moved beside the middle, nearer to each other, where that is enough.
/// </summary>
internal static class RunSpacing
{
    private const double NoiseMm = RowPlacing.StepMm;

    /// <summary>One more that is nearer to another than this part of the spacing helps nobody.</summary>
    private const double LeastPart = 10;

    /// <summary>Keeps the spacing along all timbers of a skin: where one fastening is moved a place beside it is free again, which a gap of another timber may have wanted.</summary>
    /// <remarks>Ends: every one more takes a place for good, and every move leaves fewer gaps.</remarks>
    public static void Keep(IReadOnlyList<TimberRun> runs, FasteningRule rule)
    {
        while (runs.Count(r => Keep(r, rule)) > 0) { }
    }

    /// <returns>Whether any was moved.</returns>
    private static bool Keep(TimberRun run, FasteningRule rule)
    {
        double from = 0;
        bool moved = false;
        while (Wide(run, rule, from) is { } gap)
        {
            if (Insert(run, rule, gap.From, gap.To))
            {
                continue;
            }

            if (Move(run, rule, gap.From, gap.To))
            {
                moved = true;
            }
            else
            {
                from = gap.To;
            }
        }

        return moved;
    }

    /// <summary>The stretches without a fastening that are longer than the spacing, the ends of the run among them.</summary>
    public static IEnumerable<(double From, double To)> Wide(TimberRun run, FasteningRule rule)
    {
        List<TimberStop> stops = run.Stops;
        double last = 0;
        for (int i = 0; i <= stops.Count; i++)
        {
            double stop = i < stops.Count ? stops[i].AlongMm : run.LengthMm;
            if (stop - last > rule.SpacingMm + NoiseMm)
            {
                yield return (last, stop);
            }

            last = stop;
        }
    }

    private static (double From, double To)? Wide(TimberRun run, FasteningRule rule, double from)
    {
        foreach ((double From, double) gap in Wide(run, rule))
        {
            if (gap.From >= from)
            {
                return gap;
            }
        }

        return null;
    }

    /// <summary>The least along the timber from one to one more.</summary>
    public static double Apart(FasteningRule rule) =>
        Math.Max(rule.NearestMm, rule.SpacingMm / LeastPart);

    /// <summary>One more between two, no nearer to either than the least asked and within the spacing of the first (of both, where that can be).</summary>
    private static bool Insert(TimberRun run, FasteningRule rule, double from, double to)
    {
        double rest = to - from,
            target = from + (rest / Math.Ceiling((rest / rule.SpacingMm) - 1e-9)),
            apart = Apart(rule),
            low = from + (from > 0 ? apart : 0),
            high = to - (to < run.LengthMm ? apart : 0);
        if (Best(run, target, low, high) is not { } best)
        {
            return false;
        }

        best.On.Set(best.T, best.Row);
        return true;
    }

    /// <summary>The free place nearest to a target; on the middle rather than beside it where both are as near.</summary>
    private static (TimberStretch On, double T, double Row)? Best(
        TimberRun run,
        double target,
        double low,
        double high
    )
    {
        (TimberStretch, double, double)? best = null;
        double off = double.PositiveInfinity;
        foreach ((TimberStretch on, double from, double to) in run.Stretches)
        {
            double a = Math.Max(low, from),
                b = Math.Min(high, to);
            if (a > b)
            {
                continue;
            }

            double ta = run.On(on, a),
                tb = run.On(on, b),
                near = Math.Clamp(target, a, b),
                t0 = run.On(on, near);
            foreach (double row in on.Rows)
            {
                // No further than the best so far.
                double within = off - Math.Abs(near - target);
                if (
                    within > 0
                    && RowPlacing.Nearest(
                        t => on.Lack(t, row),
                        t0,
                        Math.Max(Math.Min(ta, tb), t0 - within),
                        Math.Min(Math.Max(ta, tb), t0 + within)
                    )
                        is { } t
                    && Math.Abs(run.Along(on, t) - target) < off - NoiseMm
                )
                {
                    off = Math.Abs(run.Along(on, t) - target);
                    best = (on, t, row);
                }
            }
        }

        return best;
    }

    /// <summary>Moves the fastening before a gap, the one after it, or both, so that the spacing is kept on either side of each.</summary>
    private static bool Move(TimberRun run, FasteningRule rule, double from, double to)
    {
        List<TimberStop> stops = run.Stops;
        int i = stops.FindIndex(s => s.AlongMm == to);
        if (i < 1 || stops[i - 1].AlongMm != from)
        {
            return false;
        }

        TimberStop a = stops[i - 1],
            b = stops[i];
        double before = i > 1 ? stops[i - 2].AlongMm : 0,
            after = i + 1 < stops.Count ? stops[i + 1].AlongMm : run.LengthMm,
            furthest = Math.Min(before + rule.SpacingMm, to - rule.NearestMm),
            nearest = Math.Max(after - rule.SpacingMm, from + rule.NearestMm);
        Vec2 atA = a.On.TakeOut(a.T);
        Vec2 atB = b.On.TakeOut(b.T);
        (TimberStretch On, double T, double Row)? forA = Best(run, furthest, from, furthest),
            forB = null;
        double newA = forA is { } f ? run.Along(f.On, f.T) : from;
        bool done = forA is not null && to - newA <= rule.SpacingMm;
        if (!done)
        {
            forB = Best(run, nearest, nearest, to);
            double newB = forB is { } g ? run.Along(g.On, g.T) : to;
            done = forB is not null && newB - from <= rule.SpacingMm;
            if (done)
            {
                forA = null;
            }
            else
            {
                done =
                    forA is not null
                    && forB is not null
                    && newB - newA <= rule.SpacingMm
                    && newB - newA >= rule.NearestMm;
            }
        }

        Restore(a, atA, done ? forA : null);
        Restore(b, atB, done ? forB : null);
        return done;
    }

    private static void Restore(
        TimberStop stop,
        Vec2 at,
        (TimberStretch On, double T, double Row)? moved
    )
    {
        if (moved is { } to)
        {
            to.On.Set(to.T, to.Row);
        }
        else
        {
            stop.On.PutBack(stop.T, at);
        }
    }
}
