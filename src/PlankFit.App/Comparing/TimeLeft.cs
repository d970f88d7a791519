using PlankFit.Planking.Units;

namespace PlankFit.App.Comparing;

/// <summary>How long the rest of like things takes, by those that are done.</summary>
internal static class TimeLeft
{
    /// <summary>Less than this is no wait, seconds.</summary>
    private const double ShortSeconds = 10;

    /// <param name="sideBySide">So many are worked at once after the first, which is done by itself.</param>
    /// <returns>"about 4 min left, " or nothing where it cannot be told yet or is not worth telling.</returns>
    public static string Words(TimeSpan passed, int done, int all, int sideBySide)
    {
        // The first is alone and everything else waits for it: of n at once each takes n times as long as there are results.
        double rounds = 1 + ((done - 1.0) / Math.Max(1, sideBySide)),
            rest = (all - done) / (double)Math.Max(1, sideBySide),
            seconds = passed.TotalSeconds / rounds * rest;
        return done < 1 || done >= all || seconds < ShortSeconds ? ""
            : seconds < 100
                ? $"about {NumberText.Trimmed(10 * Math.Ceiling(seconds / 10), 0)} s left, "
            : $"about {NumberText.Trimmed(Math.Ceiling(seconds / 60), 0)} min left, ";
    }
}
