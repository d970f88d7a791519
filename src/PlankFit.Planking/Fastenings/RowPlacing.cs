namespace PlankFit.Planking.Fastenings;

/// <summary>
/// Sets points along a track: the first and the last place that is free, and between them as even as the free places allow, none further from the next
/// than the spacing where a free place lies between.
/// </summary>
internal static class RowPlacing
{
    /// <summary>Steps no finer than this are taken in the search for a free place, mm: narrower ones may be missed.</summary>
    public const double StepMm = 0.05;

    /// <param name="free">What is lacking along the track: nought where a point may be set, else less; changes by no more than the way along.</param>
    /// <param name="second">The same beside the track, where nothing on it is free within the spacing; null for no such way out.</param>
    /// <param name="set">Sets a point; <paramref name="free"/> knows of it afterwards. The second argument is true for one beside the track.</param>
    public static void Fill(
        double lengthMm,
        double spacingMm,
        double nearestMm,
        Func<double, double> free,
        Func<double, double>? second,
        Action<double, bool> set
    )
    {
        if (First(free, 0, lengthMm) is not { } from)
        {
            if (second is not null)
            {
                Fill(lengthMm, spacingMm, nearestMm, second, null, (t, _) => set(t, true));
            }

            return;
        }

        double to = Last(free, lengthMm, from) ?? from;
        if (to - from < nearestMm)
        {
            set(Nearest(free, (from + to) / 2, from, to) ?? from, false);
            return;
        }

        set(from, false);
        double last = from;
        while (to - last >= nearestMm)
        {
            double rest = to - last,
                target = last + (rest / Math.Max(1, Math.Ceiling((rest / spacingMm) - 1e-9))),
                low = last + nearestMm,
                high = Math.Min(to, last + spacingMm);
            double? next = Nearest(free, target, low, high);
            bool beside = false;
            if (next is null && second is not null)
            {
                next = Nearest(second, target, low, high);
                beside = next is not null;
            }

            next ??= First(free, high, to);
            if (next is not { } place)
            {
                return;
            }

            set(place, beside);
            last = place;
        }
    }

    /// <summary>The first free place going on from one to the other, which may lie behind it.</summary>
    private static double? First(Func<double, double> free, double from, double to)
    {
        double way = Math.Sign(to - from),
            t = from;
        while ((to - t) * way > 0)
        {
            double spare = free(t);
            if (spare >= 0)
            {
                return t;
            }

            t += way * Math.Max(StepMm, -spare);
        }

        return free(to) >= 0 ? to : null;
    }

    private static double? Last(Func<double, double> free, double from, double to) =>
        First(free, from, to);

    /// <summary>The free place nearest to a target from one place to another, the lesser first.</summary>
    public static double? Nearest(Func<double, double> free, double target, double low, double high)
    {
        if (low > high)
        {
            return null;
        }

        target = Math.Clamp(target, low, high);
        double? up = First(free, target, high);

        // The other way no further than that one is: there it would have to be nearer.
        double? down = First(
            free,
            target,
            up is { } reach ? Math.Max(low, target - (reach - target)) : low
        );
        return (up, down) switch
        {
            ({ } u, { } d) => u - target <= target - d ? u : d,
            _ => up ?? down,
        };
    }
}
