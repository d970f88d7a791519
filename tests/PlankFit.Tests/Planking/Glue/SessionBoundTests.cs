using PlankFit.Export.Glue;
using PlankFit.Nesting.Sessions;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Sessions;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Export.Glue;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>What no order can end before has the clocks in it, and stays a true bound: where the search proves its own order the best, the bound is no later.</summary>
public sealed class SessionBoundTests
{
    /// <summary>
    /// Two hands, two batches of one plank each: 4 to mix, 3 to spread, 12 for both to fasten. Mixed and spread side by side, then one plank after the other: 7 + 12 + 12
    /// are 31, which is the work shared by two and the chain. The second then waits 15 minutes from mixed to its fastening: with a clock of less than 4 + 15 + 12 it is mixed
    /// when the first is down, since nobody is free before: 19 + 4 + 3 + 12 are 38.
    /// </summary>
    [Theory]
    [InlineData(40)]
    [InlineData(22)]
    [InlineData(19)]
    public void AClockThatMakesABatchWaitIsInTheBound(double clock)
    {
        SessionProblem problem = Two(clock);
        SessionAnswer best = SessionSearch.Of(problem, 60);
        Assert.True(best.Proven);
        Assert.Equal(clock < 31 ? 38 : 31, best.Table!.EndMinutes, 0.05);
        Assert.Equal(31, Chains.BoundMinutes(problem.Tasks, 2), 1e-9);
        Assert.Equal(best.Table.EndMinutes, SessionSearch.Bound(problem, 60, best.Table), 0.05);
    }

    private static SessionProblem Two(double clock)
    {
        GangTask Mix() => new("mix", 4, 1, []);
        GangTask Spread(int mix) => new("spread", 3, 1, [new(mix)]);
        return new(
            [
                Mix(),
                Spread(0),
                new("set", 12, 2, [new(1)]),
                Mix(),
                Spread(3),
                new("set", 12, 2, [new(4), new(2)]),
            ],
            2,
            [new("B1", [new(2, 0, null, clock - 16)]), new("B2", [new(5, 3, null, clock - 16)])],
            []
        );
    }

    /// <summary>By chance: no later than any order that the search finds, and no earlier than work and chains alone.</summary>
    [Fact]
    public void NoOrderEndsBeforeIt()
    {
        for (int seed = 1; seed <= 12; seed++)
        {
            var draw = new Draw(seed);
            SessionProblem problem = Two(draw.Between(20, 45));
            Timetable best = SessionSearch.Of(problem, 90).Table!;
            double bound = SessionSearch.Bound(problem, 90, best);
            Assert.InRange(
                bound,
                Chains.BoundMinutes(problem.Tasks, problem.Hands) - 0.1,
                best.EndMinutes + 1e-6
            );
        }
    }

    /// <summary>The last few planks of a skin, searched: both bounds stand on the sheet, and neither is after the end.</summary>
    [Fact]
    public void BothBoundsAreTold()
    {
        Job job = GluedLaunch.Job(6);
        PlankLayerPlan inner = GluedLaunch.Plan.PlankLayers.First();
        BottomPlan plan = GluedLaunch.Of(
            job with
            {
                Glue = job.Glue! with
                {
                    Crew = job.Glue.Crew! with { Hands = 3, Searched = true },
                    Done = new([
                        .. inner
                            .Starboard.Concat(inner.Port)
                            .Where(p => p.Number > 12)
                            .Select(p => new GlueDone(p.Id, null, p.Side, 900)),
                    ]),
                },
            }
        );
        GluePlan whole = plan.Glue!;
        GluePlan glue = BetterSessions.Of(
            whole with
            {
                Sessions = [.. whole.Sessions.Where(s => s.Layer == "inner")],
                Stages = [.. whole.Stages.Where(s => s.Layer == "inner")],
            },
            id => plan.LayerOf(id).Of(id.Side).MasterNumber,
            0.3
        );
        Assert.NotEmpty(glue.Sessions);
        Assert.Contains(glue.Sessions, s => s.Searched is not null);
        Assert.All(
            glue.Sessions,
            s =>
            {
                Assert.True(s.NoneEndsBefore <= s.To + 1e-6);
                // Orders that hold at any hour are some of all orders.
                Assert.True(s.NoneEndsBefore <= (s.Searched?.EndsAt ?? s.To) + 0.1);
                Assert.True(
                    s.Searched is null or { Proved: false } || s.Searched.Value.EndsAt >= s.To - 1
                );
            }
        );
        string words = string.Join(' ', GlueSheetsTests.Words(GlueSheets.Of(plan, glue)));
        Assert.All(
            glue.Sessions.Where(s => s.Searched is not null),
            s => Assert.Contains(GlueWords.Searched(s), words)
        );
    }
}
