using System.Collections.Immutable;
using PlankFit.Nesting.Sessions;
using PlankFit.Planking.Glue.Sessions;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>Plans of a crew's work by hand; the anomalies are Graham's (1969, from memory).</summary>
public sealed class ListScheduleTests
{
    [Fact]
    public void SixPlanksOutFromAMaster()
    {
        ImmutableArray<GangTask> six =
        [
            new("M", 20, 1, []),
            new("F1", 20, 1, [new(0)]),
            new("F2", 20, 1, [new(1)]),
            new("F3", 20, 1, [new(2)]),
            new("A1", 20, 1, [new(0)]),
            new("A2", 20, 1, [new(4)]),
        ];
        Assert.Equal([120, 80, 80], Ends(six, 1, 2, 3));
        ImmutableArray<GangTask> two =
        [
            .. Enumerable
                .Range(0, 2)
                .SelectMany(s =>
                    new GangTask[]
                    {
                        new("M", 20, 1, []),
                        new("F", 20, 1, [new(3 * s)]),
                        new("A", 20, 1, [new(3 * s)]),
                    }
                ),
        ];
        Assert.Equal([120, 60, 60, 40], Ends(two, 1, 2, 3, 4));
    }

    [Fact]
    public void SpreadAndFastenSixInAChain()
    {
        ImmutableArray<GangTask> tasks = Planks([.. Enumerable.Repeat(12.0, 6)], 10);
        Assert.Equal([90, 75], Ends(tasks, 2, 3));
    }

    [Theory]
    [InlineData(3, 0, false, 12)]
    [InlineData(4, 0, false, 15)]
    [InlineData(3, 1, false, 13)]
    [InlineData(3, 0, true, 16)]
    public void MoreHandsShorterTasksAndFewerRulesCanEndLater(
        int hands,
        double less,
        bool freer,
        double end
    )
    {
        ImmutableArray<GangTask> tasks = Graham(less, freer);
        Assert.Equal(end, ListSchedule.Of(tasks, hands, [.. Enumerable.Range(0, 9)])!.EndMinutes);
    }

    [Theory]
    [InlineData(3, 0, 12)]
    [InlineData(4, 0, 12)]
    [InlineData(3, 1, 10)]
    public void TheSearchFindsWhatTheListMisses(int hands, double less, double end)
    {
        SessionAnswer found = SessionSearch.Of(SessionProblem.Of(Graham(less, false), hands), 100);
        Assert.True(found.Proven);
        Assert.Equal(end, found.Table!.EndMinutes, 1e-9);
        Assert.Equal(end, found.BoundMinutes, 1e-9);
    }

    [Theory]
    [InlineData(8, 3, 113)]
    [InlineData(12, 3, 167)]
    [InlineData(16, 3, 227)]
    [InlineData(8, 4, 64)]
    [InlineData(12, 4, 94)]
    [InlineData(16, 4, 127)]
    public void SpreadAndFastenOnBothSides(int planks, int hands, double end)
    {
        double[] half = [.. Enumerable.Range(0, planks / 2).Select(i => 12.0 + (7 * i % 5))];
        ImmutableArray<GangTask> both = Joined(Planks(half, 10), Planks(half, 10));
        Timetable list = ListSchedule.Of(both, hands, ListSchedule.LongestChainFirst(both))!;
        CrewLaws.Hold(both, hands, list);
        Assert.True(list.EndMinutes >= end);
        SessionAnswer found = SessionSearch.Of(SessionProblem.Of(both, hands), 1000, list);
        Assert.True(found.Proven);
        Assert.Equal(end, found.Table!.EndMinutes, 1e-9);
        CrewLaws.Hold(both, hands, found.Table);
    }

    [Fact]
    public void EightySixPlanksByGangs()
    {
        ImmutableArray<GangTask> all = Joined(Side(), Side());
        Assert.Equal([1462, 731, 497, 391], Ends(all, 1, 2, 3, 4));
        int[] bounds =
        [
            .. new[] { 1, 2, 3, 4 }.Select(g => (int)Math.Ceiling(Chains.BoundMinutes(all, g))),
        ];
        Assert.Equal([1462, 731, 488, 391], bounds);
        // By number of planks and not by chain.
        ImmutableArray<int> numbered = [.. Enumerable.Range(0, all.Length)];
        Assert.True(ListSchedule.Of(all, 3, numbered)!.EndMinutes > 497);

        static ImmutableArray<GangTask> Side() =>
            [
                .. Enumerable
                    .Range(0, 43)
                    .Select(i => new GangTask(
                        $"{i}",
                        15 + (7 * i % 5),
                        1,
                        i == 20 ? []
                            : i < 20 ? [new(i + 1)]
                            : [new(i - 1)]
                    )),
            ];
    }

    [Fact]
    public void NothingBeginsThatWantsMoreHandsThanThereAre() =>
        Assert.Null(ListSchedule.Of([new("two", 5, 2, [])], 1, [0]));

    private static double[] Ends(ImmutableArray<GangTask> tasks, params int[] hands) =>
        [
            .. hands.Select(h =>
            {
                Timetable table = ListSchedule.Of(tasks, h, ListSchedule.LongestChainFirst(tasks))!;
                CrewLaws.Hold(tasks, h, table);
                return table.EndMinutes;
            }),
        ];

    /// <summary>A chain of planks: a hand spreads for 3 minutes, two fasten, no longer than the lag after the glue is on.</summary>
    internal static ImmutableArray<GangTask> Planks(double[] fasten, double lag) =>
        [
            .. fasten.SelectMany(
                (minutes, i) =>
                    new GangTask[]
                    {
                        new($"spread {i}", 3, 1, []),
                        new(
                            $"fasten {i}",
                            minutes,
                            2,
                            i == 0 ? [new(0, 0, lag)] : [new(2 * i, 0, lag), new((2 * i) - 1)]
                        ),
                    }
            ),
        ];

    internal static ImmutableArray<GangTask> Joined(
        ImmutableArray<GangTask> a,
        ImmutableArray<GangTask> b
    ) =>
        [
            .. a,
            .. b.Select(t =>
                t with
                {
                    After = [.. t.After.Select(l => l with { Task = l.Task + a.Length })],
                }
            ),
        ];

    private static ImmutableArray<GangTask> Graham(double less, bool freer)
    {
        double[] minutes = [3, 2, 2, 2, 4, 4, 4, 4, 9];
        return
        [
            .. minutes.Select(
                (m, i) =>
                    new GangTask(
                        $"{i + 1}",
                        m - less,
                        1,
                        i == 8 ? [new(0)]
                            : i >= 4 && !(freer && i < 6) ? [new(3)]
                            : []
                    )
            ),
        ];
    }
}
