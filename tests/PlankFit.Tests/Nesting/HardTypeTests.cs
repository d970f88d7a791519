namespace PlankFit.Tests.Nesting;

/// <summary>
/// The hard type of Scholl, Klein and Jürgens 1997 (its bounds from memory): 200 things of 20,000 to 35,000 in bins of 100,000, three to five in each. Drawn anew here; where as many bins are
/// used as the bound asks for, that is the optimum: of the seeds 1 to 15 all but the tenth, whose bound by weights is so little above 55 that the search's own bound,
/// which leaves room for what doubles lose, cannot tell.
/// </summary>
public sealed class HardTypeTests
{
    private const int Things = 200;
    private const int Bin = 100_000;
    private const int Least = 20_000;
    private const int Most = 35_000;

    [Theory]
    [MemberData(nameof(Seeds))]
    public void TheFewestBinsAreFound(int seed)
    {
        int[] things = Drawn(seed);
        (int used, double atLeast) = ClassicalCases.Cut(Bin, things.Select(t => (t, 1)));
        int proved = Math.Max((int)Math.Ceiling(atLeast - 1e-6), Weighed(things));
        Assert.True(used <= proved, $"{used} bins, and {proved} proved");
    }

    public static TheoryData<int> Seeds => Long.IsAsked ? [1, 6, 11] : [1];

    /// <summary>
    /// Their optimum is 56, and neither wood nor the search's bound says so of the tenth: 54.4 and 54.8 bins of things. Weights do, and in whole numbers.
    /// </summary>
    [Theory]
    [InlineData(10)]
    [InlineData(11)]
    public void TheTenthAndEleventhNeedFiftySixBins(int seed) =>
        Assert.Equal(56, Weighed(Drawn(seed)));

    /// <summary>
    /// Bins that so much weight asks for, where no bin holds more than 1. A thing of s weighs 1/4 + (s - 25,000) k, but 1/3 at the most, which it comes to at some t: k is
    /// 1/12 over (t - 25,000). Three things weigh 1 at the most; four that fit weigh 1 + (their sum - 100,000) k or less, which is 1 at the most; five fit only if each is
    /// 20,000, and weigh less. For t the best of all is taken. All times 12 (t - 25,000), so that nothing is rounded; and no bin weighs more, all sets of things asked.
    /// </summary>
    private static int Weighed(int[] things)
    {
        const int Quarter = Bin / 4;
        (long Weight, int From, int Bins) best = (0, 0, 0);
        for (int t = Quarter + 1; t <= Most; t++)
        {
            long bin = 12L * (t - Quarter),
                sum = things.Sum(s => Weight(s, t));
            int bins = (int)((sum + bin - 1) / bin);
            best = bins > best.Bins ? (sum, t, bins) : best;
        }

        Assert.Equal(12L * (best.From - Quarter), Heaviest(things, s => Weight(s, best.From)));
        return best.Bins;

        static long Weight(int s, int t) =>
            Math.Min(4L * (t - Quarter), (3L * (t - Quarter)) + s - Quarter);
    }

    /// <summary>Of all that fits into one bin, each thing once.</summary>
    private static long Heaviest(int[] things, Func<int, long> weight)
    {
        long[] most = new long[Bin + 1];
        foreach (int thing in things)
        {
            for (int room = Bin; room >= thing; room--)
            {
                most[room] = Math.Max(most[room], most[room - thing] + weight(thing));
            }
        }

        return most[Bin];
    }

    private static int[] Drawn(int seed)
    {
        var chance = new Random(seed);
        return [.. Enumerable.Range(0, Things).Select(_ => chance.Next(Least, Most + 1))];
    }
}
