using System.Collections.Immutable;
using PlankFit.Export.Glue;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Export.Glue;
using PlankFit.Tests.Reading.Names;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>What is laid with a thinned mix is timed by clocks of that mix or not at all, and so is what comes after it.</summary>
public sealed class ThinnedMixTests
{
    private const string Core = "core cloth";

    private static BottomPlan Planned(
        Func<Mix, Mix> resin,
        Func<Mix, Mix> glue,
        params ImmutableArray<GlueDone> done
    )
    {
        Job job = GluedLaunch.Job(3);
        Mix usual = job.Glue!.Resin!;
        return GluedLaunch.Of(
            job with
            {
                Glue = job.Glue with
                {
                    Resin = resin(usual),
                    Glue = glue(usual with { Name = "thick glue" }),
                    Done = new(done),
                },
            }
        );
    }

    private static Mix Same(Mix mix) => mix;

    private static Mix Thinned(Mix mix) => mix with { Thinned = 0.05 };

    private static Mix Tried(Mix mix) => Thinned(mix) with { ClocksAreOfThinned = true };

    private static Finding[] Told(GluePlan plan) =>
        [
            .. plan.Findings.Where(f =>
                f.Message.Contains("have no batch and no hour", StringComparison.Ordinal)
            ),
        ];

    [Fact]
    public void NeitherItNorWhatComesAfterHasAnHour()
    {
        GluePlan usual = Planned(Same, Same).Glue!,
            thinned = Planned(Thinned, Same).Glue!;
        Assert.Contains(usual.Batches, b => b.Layer == Core);
        // What is glued before it is as it was.
        GlueStage skin = Assert.Single(thinned.Stages);
        Assert.Equal("inner", skin.Layer);
        Assert.Equal(
            usual.Stages[0].Batches.Select(b => (b.Name, b.MixAt, b.Clocks)),
            skin.Batches.Select(b => (b.Name, b.MixAt, b.Clocks))
        );
        Finding told = Assert.Single(Told(thinned));
        Assert.Equal("resin.thinned-percent", told.About.Key);
        Assert.Equal(Core, thinned.NotPlanned[0]);
        Assert.Contains("outer", thinned.NotPlanned);
        Assert.All(
            thinned.NotPlanned,
            l => Assert.Contains(l, told.Message, StringComparison.Ordinal)
        );
        // It is bought all the same.
        Assert.Equal(
            usual.Totals.Single(t => t.Mix.Name == "resin").Bounds,
            thinned.Totals.Single(t => t.Mix.Name == "resin").Bounds
        );
    }

    [Fact]
    public void WithClocksOfItsOwnItIsPlannedByThem()
    {
        GluePlan usual = Planned(Same, Same).Glue!,
            tried = Planned(Tried, Tried).Glue!;
        Assert.Empty(Told(tried));
        Assert.Equal(usual.NotPlanned, tried.NotPlanned);
        Assert.Equal(
            usual.Batches.Select(b => (b.Name, b.MixAt, b.Clocks)),
            tried.Batches.Select(b => (b.Name, b.MixAt, b.Clocks))
        );
    }

    /// <summary>On by the progress: nobody knows when it has cured, so that nothing on it has an hour, and none is said of it.</summary>
    [Fact]
    public void WhatIsOnWithItHoldsUpTheRest()
    {
        PlankLayerPlan inner = GluedLaunch.Plan.PlankLayers.First();
        GlueDone[] done =
        [
            .. inner
                .Starboard.Concat(inner.Port)
                .Select(p => new GlueDone(p.Id, null, p.Side, 900)),
            new(null, Core, Side.Starboard, 5000),
            new(null, Core, Side.Port, 5100),
        ];
        Assert.NotEmpty(Planned(Same, Same, [.. done]).Glue!.Batches);
        GluePlan thinned = Planned(Thinned, Same, [.. done]).Glue!;
        Assert.Empty(thinned.Batches);
        Assert.Equal("outer", thinned.NotPlanned[0]);
        Assert.DoesNotContain(Core, thinned.NotPlanned);
        Assert.Contains("come after core cloth", Assert.Single(Told(thinned)).Message);
        GlueStage cloth = thinned.Stages.Single(s => s.Layer == Core);
        Assert.All(cloth.Before.Concat(cloth.After), h => Assert.Null(h.NotBefore));
        // A skin glued with it: what is boarded when it has cured has no hour either.
        GluePlan glue = Planned(Same, Thinned, [.. done.SkipLast(2)]).Glue!;
        Assert.Empty(glue.Batches);
        Assert.All(glue.Stages.SelectMany(s => s.After), h => Assert.Null(h.NotBefore));
        Assert.Equal(Core, glue.NotPlanned[0]);
    }

    [Fact]
    public void SheetsSayWhatIsLeftOut()
    {
        BottomPlan plan = Planned(Thinned, Thinned);
        Assert.Empty(plan.Glue!.Stages);
        string words = string.Join(' ', GlueSheetsTests.Words(GlueSheets.Of(plan, plan.Glue)));
        Assert.Contains("resin is THINNED by 5 %", words, StringComparison.Ordinal);
        Assert.Contains("NOT ALL IS PLANNED", words, StringComparison.Ordinal);
        Assert.DoesNotContain("Down by", words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("thinned-percent = 5\nclocks-are-for = \"thinned\"", true, true)]
    [InlineData("thinned-percent = 5", true, false)]
    [InlineData("clocks-are-for = \"thinned\"", false, false)]
    public void WhatClocksAreForIsRead(string keys, bool reads, bool timed)
    {
        const string head = "parts-by-volume = [2, 1]";
        ReadResult read = EveryName.Read(
            EveryName
                .Job.ReplaceLineEndings("\n")
                .Replace(head, $"{head}\n{keys}", StringComparison.Ordinal)
        );
        Assert.Equal(reads, read.Job is not null);
        if (read.Job is { } job)
        {
            Assert.Equal(timed, job.Glue!.Resin!.IsTimed);
        }
        else
        {
            Assert.Contains(
                read.Findings,
                f => f.Message.Contains("nothing is thinned", StringComparison.Ordinal)
            );
        }
    }
}
