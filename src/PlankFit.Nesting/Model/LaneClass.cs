using System.Collections.Immutable;

namespace PlankFit.Nesting;

/// <summary>Lanes of one width, for things no higher than that.</summary>
/// <param name="LeastMm">The height of the least high thing that has no narrower lane: no lane of this class could be narrower, whatever lies in it.</param>
internal sealed record LaneClass(double HeightMm, double LeastMm)
{
    /// <summary>A class ends where heights have fallen by this part: what is narrower gets lanes of its own.</summary>
    private const double Step = 0.07;

    /// <summary>Widest first. Every board gets lanes as wide as it allows, and heights near each other share a class.</summary>
    /// <param name="items">All things that are laid in rows.</param>
    /// <param name="widths">Of the boards, as far as they may be used.</param>
    public static ImmutableArray<LaneClass> Of(
        IEnumerable<NestItem> items,
        IEnumerable<double> widths
    )
    {
        NestItem[] all = [.. items];
        double[] sorted = [.. all.Select(i => i.HeightMm).OrderDescending()];
        // What is made of several pieces only has the classes that boards need: each class more is work.
        double highest = all.Where(i => i.Parts.Length == 1)
            .Select(i => i.HeightMm)
            .DefaultIfEmpty(double.PositiveInfinity)
            .Max();
        double[] limits = [.. widths.Distinct().OrderDescending()];
        var starts = new List<double>();
        double last = double.PositiveInfinity;
        foreach (double h in sorted)
        {
            bool newBoard = limits.Any(w => h <= w && last > w);
            if (
                last == double.PositiveInfinity
                || newBoard
                || (h <= highest && h < (1 - Step) * Math.Min(highest, starts[^1]))
            )
            {
                starts.Add(h);
            }

            last = h;
        }

        return
        [
            .. starts.Select(
                (h, i) =>
                    new LaneClass(
                        h,
                        sorted.Last(s => s <= h && (i + 1 >= starts.Count || s > starts[i + 1]))
                    )
            ),
        ];
    }
}
