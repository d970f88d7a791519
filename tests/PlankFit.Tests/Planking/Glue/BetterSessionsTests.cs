using PlankFit.Nesting.Sessions;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>Each session of planks searched: never later than the list, sooner where it can be, the same every time, and no law broken.</summary>
public sealed class BetterSessionsTests
{
    [Fact]
    public void NoSessionEndsLaterAndNoLawIsBroken()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        Job job = GluedLaunch.Job(6);
        BottomPlan plan = GluedLaunch.Of(
            job with
            {
                Glue = job.Glue! with { Crew = job.Glue.Crew! with { Searched = true } },
            }
        );
        GluePlan list = plan.Glue!,
            better = Searched(plan);
        GlueLaws.Hold(plan with { Glue = better });
        Assert.Equal(list.Sessions.Length, better.Sessions.Length);
        Assert.All(
            list.Sessions.Zip(better.Sessions),
            s =>
            {
                Assert.True(s.Second.To <= s.First.To);
                Assert.True(s.Second.From >= s.First.From);
                Assert.Equal(s.First.Planks > 0, s.Second.NoneEndsBefore is not null);
                Assert.True((s.Second.NoneEndsBefore ?? 0) <= s.Second.To + 1e-6);
                Assert.Equal(
                    s.First.Batches.Select(b => b.Name),
                    s.Second.Batches.Select(b => b.Name)
                );
            }
        );
        Assert.Contains(list.Sessions.Zip(better.Sessions), s => s.Second.To < s.First.To);
        GluePlan again = Searched(plan);
        Assert.Equal(
            better.Batches.Select(b => (b.Name, b.MixAt, b.Clocks)),
            again.Batches.Select(b => (b.Name, b.MixAt, b.Clocks))
        );
    }

    private static GluePlan Searched(BottomPlan plan) =>
        BetterSessions.Of(plan.Glue!, id => plan.LayerOf(id).Of(id.Side).MasterNumber, 0.3);
}
