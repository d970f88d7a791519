using System.Collections.Immutable;

namespace PlankFit.Nesting.Model;

/// <summary>Lanes of one width, for things no higher than that.</summary>
/// <param name="Bands">Highest first: which widths its lanes could have at the least, by the highest thing in them.</param>
internal sealed record LaneClass(double HeightMm, ImmutableArray<LaneBand> Bands)
{
    /// <summary>A band ends where heights have fallen by this part. Each is a little work and makes the bound of a board of many lanes the sharper.</summary>
    private const double BandStep = 0.015;

    /// <summary>A class ends where heights have fallen by this part: what is narrower gets lanes of its own.</summary>
    private const double Step = 0.07;

    /// <summary>Widest first. Every board gets lanes as wide as it allows, and heights near each other share a class.</summary>
    /// <param name="items">All things that are laid in rows.</param>
    /// <param name="widths">Of the boards, as far as they may be used, and of what is clear beside their faults.</param>
    /// <param name="kerfMm">Between two lanes.</param>
    public static ImmutableArray<LaneClass> Of(
        IEnumerable<NestItem> items,
        IEnumerable<double> widths,
        double kerfMm
    )
    {
        NestItem[] all = [.. items];
        double[] sorted = [.. all.Select(i => i.HeightMm).OrderDescending()];
        // What is made of several pieces only has the classes that boards need: each class more is work.
        double highest = all.Where(i => i.Parts.Length == 1)
            .Select(i => i.HeightMm)
            .DefaultIfEmpty(double.PositiveInfinity)
            .Max();
        // What is left of a board beside as many of the widest lanes as it gives is a lane too, if anything goes into it.
        double[] limits =
        [
            .. widths
                .SelectMany(w => new[] { w, ((w + kerfMm) % (highest + kerfMm)) - kerfMm })
                .Distinct()
                .OrderDescending(),
        ];
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

        Thin(starts, limits[0]);
        return
        [
            .. starts.Select(
                (h, i) =>
                    new LaneClass(
                        h,
                        BandsOf(
                            sorted.Where(s =>
                                s <= h && (i + 1 >= starts.Count || s > starts[i + 1])
                            )
                        )
                    )
            ),
        ];
    }

    /// <summary>So many classes are work enough: those that differ least from the next wider one go, but never the widest that any board takes.</summary>
    private static void Thin(List<double> starts, double widest)
    {
        while (starts.Count > Most)
        {
            int least = -1;
            for (int i = 1; i < starts.Count; i++)
            {
                bool isWidest = starts[i] <= widest && starts[i - 1] > widest;
                if (
                    !isWidest
                    && (least < 0 || starts[i - 1] - starts[i] < starts[least - 1] - starts[least])
                )
                {
                    least = i;
                }
            }

            starts.RemoveAt(least);
        }
    }

    private const int Most = 24;

    private static ImmutableArray<LaneBand> BandsOf(IEnumerable<double> heights)
    {
        var bands = new List<LaneBand>();
        foreach (double h in heights)
        {
            if (bands.Count == 0 || h < (1 - BandStep) * bands[^1].HighMm)
            {
                bands.Add(new(h, h));
            }

            bands[^1] = bands[^1] with { LeastMm = h };
        }

        return [.. bands];
    }
}

/// <summary>Things of nearly one height. A lane in which the highest thing is of the band is no narrower than the least of it, and holds nothing higher.</summary>
internal readonly record struct LaneBand(double HighMm, double LeastMm);
