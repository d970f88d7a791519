using System.Collections.Immutable;
using PlankFit.Nesting.Sessions;
using PlankFit.Planking.Glue.Sessions;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>Two sides wetted out by one gang, each trimmed while it is tacky: windows, shifts, and what stands in the way.</summary>
public sealed class WindowTests
{
    [Theory]
    [InlineData(180, 360, 720)]
    [InlineData(60, 240, 600)]
    [InlineData(60, 239, 720)]
    public void OneGang(double from, double to, double end)
    {
        SessionAnswer found = SessionSearch.Of(SessionProblem.Of(Tasks(from, to, true), 1), 3000);
        Assert.True(found.Proven);
        Assert.Equal(end, found.Table!.EndMinutes, 1e-9);
        CrewLaws.Hold(Tasks(from, to, true), 1, found.Table);
    }

    [Fact]
    public void TwoGangsDoBothSidesAtOnce() =>
        Assert.Equal(
            480,
            SessionSearch.Of(SessionProblem.Of(Tasks(180, 360, false), 2), 3000).Table!.EndMinutes,
            1e-9
        );

    [Fact]
    public void OverTwoDays()
    {
        SessionProblem nights = SessionProblem.Of(Tasks(180, 360, true), 1) with
        {
            Breaks = [(540, 1440)],
        };
        SessionAnswer found = SessionSearch.Of(nights, 5000);
        Assert.True(found.Proven);
        Assert.Equal(1440 + 480, found.Table!.EndMinutes, 1e-9);
    }

    [Fact]
    public void WhatIsInTheWayOfOneDay()
    {
        ImmutableArray<GangTask> bare =
        [
            .. Tasks(180, 360, false).Select(t => t with { After = [] }),
        ];
        SessionProblem day = new(
            bare,
            2,
            [
                new(
                    "the day's end",
                    [.. bare.Select((t, i) => new SessionBound(i, null, null, 540 - t.Minutes))]
                ),
                new("not before 180", [new(1, 0, 180, null), new(3, 2, 180, null)]),
                new("not after 360", [new(1, 0, null, 360), new(3, 2, null, 360)]),
                new("B after A", [new(2, 0, 0, null)]),
            ],
            []
        );
        ImmutableArray<RuleInTheWay> found = SessionSearch.InTheWay(day, 3000);
        Assert.Equal(
            ["the day's end", "not before 180", "B after A"],
            found.Select(r => r.Rule.Name)
        );
        // By hand: 240 + 240 + 180 + 60 is 720; the wait may be none and 180 is all too much; B would have to begin 180 before A has ended.
        Assert.Equal([180, 180, 180], found.Select(r => r.Minutes!.Value));
        Assert.Empty(SessionSearch.InTheWay(day with { Rules = day.Rules.RemoveAt(1) }, 3000));
    }

    /// <summary>Wet A, trim A, wet B, trim B; B after A where one gang does both.</summary>
    private static ImmutableArray<GangTask> Tasks(double from, double to, bool inTurn) =>
        [
            new("wet A", 240, 1, []),
            new("trim A", 60, 1, [new(0, from, to)]),
            new("wet B", 240, 1, inTurn ? [new(0)] : []),
            new("trim B", 60, 1, [new(2, from, to)]),
        ];
}
