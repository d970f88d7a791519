using PlankFit.Export.Glue;
using PlankFit.Nesting.Sessions;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>A plan that waits for clamps never has more on at once than are on hand, breaks no clock by it, and says why where it cannot be.</summary>
public sealed class WaitForClampsTests
{
    private const string Inner = "inner";

    /// <summary>Where hands alone are wanting nothing else is advised.</summary>
    [Fact]
    public void OneHandIsToldThatAnotherIsWanted()
    {
        Job job = GluedLaunch.Job(3);
        string[] told =
        [
            .. GluedLaunch
                .Of(
                    job with
                    {
                        Glue = job.Glue! with { Crew = job.Glue!.Crew! with { Hands = 1 } },
                    }
                )
                .Glue!.Findings.Select(f => f.Message)
                .Where(m => m.Contains("the crew has 1", StringComparison.Ordinal)),
        ];
        Assert.NotEmpty(told);
        Assert.All(
            told,
            t =>
                Assert.Equal(
                    t.Contains("the crew has 1. ", StringComparison.Ordinal),
                    t.Contains("Nothing but another hand will do", StringComparison.Ordinal)
                )
        );
        Assert.Contains(
            told,
            t => t.Contains("Nothing but another hand will do", StringComparison.Ordinal)
        );
    }

    public static TheoryData<int, int, bool> Shops
    {
        get
        {
            var shops = new TheoryData<int, int, bool> { { 3, 40, false }, { 14, 90, true } };
            if (LongRuns.More)
            {
                shops.Add(6, 25, false);
            }

            return shops;
        }
    }

    /// <summary>By chance: shops, crews and products of a seed, and as many clamps as a few planks take.</summary>
    [Theory]
    [MemberData(nameof(Shops))]
    public void NoMoreAreOnAtOnceThanAreOnHand(int seed, int hand, bool offInAShift)
    {
        BottomPlan free = Planned(seed, c => c with { ClampsOnHand = hand }),
            waits = Planned(seed, c => c with { ClampsOnHand = hand, WaitsForClamps = true });
        Assert.True(AtOnce(free) > hand, "nothing has to wait");
        Assert.Contains(free.Glue!.Findings, f => f.About.Key == "crew.clamps-on-hand");

        GlueLaws.Hold(waits);
        Assert.Equal(
            AtOnce(waits),
            waits.Glue!.Sessions.Select(ClampCounts.Of(waits.Glue)).Max(c => c.AtOnce)
        );
        Assert.InRange(AtOnce(waits), 1, hand);
        Assert.DoesNotContain(waits.Glue!.Findings, f => f.About.Key == "crew.clamps-on-hand");
        Assert.Equal(Down(free), Down(waits));
        // They are waited for, and not mixed for plank by plank.
        Assert.True(waits.Glue.Batches.Count() <= 2.5 * free.Glue!.Batches.Count());
        // Where some come off within a shift the next go on just then.
        (double From, double To, int Count)[] on = Spans(waits);
        Assert.Equal(offInAShift, on.Any(o => on.Any(p => p.To == o.From)));
        // The sheet says who waits for whom, and only where somebody does.
        const string wants = "it is clamps that it wants";
        Assert.EndsWith(
            wants + ".",
            Assert.Single(GlueWords.Clamps(waits.Glue)),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain(
            wants,
            Assert.Single(GlueWords.Clamps(free.Glue!)),
            StringComparison.Ordinal
        );
        // One more of what a single plank takes would not do: they are used.
        Assert.True(AtOnce(waits) > hand / 2);
    }

    [Fact]
    public void WithEnoughOfThemNothingWaits()
    {
        BottomPlan free = Planned(6, c => c),
            waits = Planned(6, c => c with { ClampsOnHand = 2000, WaitsForClamps = true });
        Assert.DoesNotContain(
            "it is clamps that it wants",
            Assert.Single(GlueWords.Clamps(waits.Glue!)),
            StringComparison.Ordinal
        );
        Assert.Equal(
            free.Glue!.Batches.Select(b => (b.Name, b.MixAt, b.Clocks)),
            waits.Glue!.Batches.Select(b => (b.Name, b.MixAt, b.Clocks))
        );
    }

    [Theory]
    [InlineData(2, true, "a plank is held by")]
    [InlineData(40, false, "nothing says when one may come off")]
    public void WhyItCannotBeIsSaid(int hand, bool cures, string said)
    {
        GluePlan glue = Planned(
            3,
            c => c with { ClampsOnHand = hand, WaitsForClamps = true },
            cures
        ).Glue!;
        Assert.Equal(Inner, glue.NotPlanned[0]);
        Finding why = Assert.Single(glue.Findings, f => f.About.Key == "crew.clamps-on-hand");
        Assert.Contains(said, why.Message, StringComparison.Ordinal);
    }

    /// <summary>Planks that were down before the plan keep theirs until their glue has cured.</summary>
    [Fact]
    public void WhatIsDownKeepsItsClamps()
    {
        BottomPlan first = Planned(3, c => c with { ClampsOnHand = 40, WaitsForClamps = true });
        GlueSession begun = first.Glue!.Sessions[0];
        GlueDone[] done =
        [
            .. begun
                .Batches.SelectMany(b => b.Planks)
                .Select(p => new GlueDone(p.Id, null, p.Id.Side, p.DoneAt)),
        ];
        Job job = first.Job;
        BottomPlan again = GluedLaunch.Of(
            job with
            {
                Glue = job.Glue! with { Done = new([.. done]) },
            }
        );
        Assert.NotEmpty(again.Glue!.ClampsBefore);
        Assert.InRange(AtOnce(again), 1, 40);
    }

    /// <summary>A searched session that would want more than there are is left as the list has it.</summary>
    [Fact]
    public void ASearchedSessionKeepsToThemAsWell()
    {
        // Moved as the search would have it, 68 would be on at once.
        const int hand = 40;
        BottomPlan plan = Planned(
            8,
            c => c with { ClampsOnHand = hand, WaitsForClamps = true, Searched = true }
        );
        GluePlan better = BetterSessions.Of(
            plan.Glue!,
            id => plan.LayerOf(id).Of(id.Side).MasterNumber,
            0.01
        );
        Assert.InRange(AtOnce(plan with { Glue = better }), 1, hand);
        GlueLaws.Hold(plan with { Glue = better });
    }

    private static PlankId[] Down(BottomPlan plan) =>
        [.. plan.Glue!.Batches.SelectMany(b => b.Planks).Select(p => p.Id).Order()];

    /// <summary>The most at any moment at which a batch's first plank goes down, from planks and clocks alone.</summary>
    private static int AtOnce(BottomPlan plan)
    {
        (double From, double To, int Count)[] on = Spans(plan);
        return on.Where(o => o.From > 0)
            .Max(o => on.Where(p => p.From <= o.From && o.From < p.To).Sum(p => p.Count));
    }

    private static (double From, double To, int Count)[] Spans(BottomPlan plan)
    {
        GluePlan glue = plan.Glue!;
        double every = plan.Job.Timber?.ClampSpacingMm ?? 300;
        var lengths = plan
            .PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port))
            .ToDictionary(p => p.Id, p => p.CutLengthMm);
        int On(PlankId id) => 1 + (int)Math.Ceiling(lengths[id] / every);
        return
        [
            .. glue
                .Batches.Where(b => !b.Planks.IsEmpty)
                .Select(b =>
                    (b.Planks[0].SetAt, Off(b.Clocks.DownAt), b.Planks.Sum(p => On(p.Id)))
                ),
            .. glue
                .Spec.Done.Rows.Where(r => r.Plank is not null)
                .Select(r => (0.0, Off(r.At), On(r.Plank!.Value))),
        ];

        double Off(double down) =>
            down
            + Math.Ceiling(
                ClockRun.Minutes(
                    glue.Spec.BetweenLayers!.Clocks.Sandable!,
                    null,
                    glue.Spec.Clock!.Temperature,
                    down
                )
            );
    }

    private static BottomPlan Planned(int seed, Func<CrewSpec, CrewSpec> with, bool cures = true)
    {
        Job job = GluedLaunch.Job(seed);
        GlueSpec spec = job.Glue!;
        Mix glue = spec.BetweenLayers!;
        return GluedLaunch.Of(
            job with
            {
                Glue = spec with
                {
                    Glue = cures
                        ? glue
                        : glue with
                        {
                            Clocks = glue.Clocks with { Sandable = null },
                        },
                    Crew = with(spec.Crew! with { HoldsPlanks = 1, HeldBy = "spring clamps" }),
                },
            }
        );
    }
}
