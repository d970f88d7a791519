using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Glue;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>As work goes on: what is down stays, and the rest is planned from there.</summary>
public sealed class PlannedAgainTests
{
    [Theory]
    [InlineData(3, 5)]
    [InlineData(6, 30)]
    [InlineData(6, 1)]
    [InlineData(12, 70)]
    public void TheRestIsPlannedFromWhatIsDown(int seed, int batches)
    {
        Job job = GluedLaunch.Job(seed);
        GluePlan first = Planned(job).Glue!;
        GlueBatch[] mixed = [.. first.Batches.OrderBy(b => b.MixAt).Take(batches)];
        var done = new GlueProgress([
            .. mixed.SelectMany(b =>
                b.Planks.Select(p => new GlueDone(p.Id, null, b.Side, p.DoneAt) { Batch = b.Name })
            ),
        ]);
        BottomPlan plan = Planned(job with { Glue = job.Glue! with { Done = done } });
        GluePlan again = plan.Glue!;

        GlueLaws.Hold(plan);
        PlankId[] down = [.. done.Rows.Select(r => r.Plank!.Value)];
        PlankId[] left = [.. again.Batches.SelectMany(b => b.Planks).Select(p => p.Id)];
        Assert.Empty(down.Intersect(left));
        Assert.Equal(
            first.Batches.SelectMany(b => b.Planks).Select(p => p.Id).Order(),
            down.Concat(left).Order()
        );
        Assert.All(again.Batches, b => Assert.True(b.MixAt >= done.Latest));
        Assert.Equal(done.LastBatch + 1, int.Parse(again.Batches.MinBy(b => b.MixAt)!.Name[1..]));
        Assert.Equal(Wanted(first), Wanted(again));

        // What small batches leave over hangs on which are still to be mixed.
        static IEnumerable<Estimate> Wanted(GluePlan glue) =>
            glue.Amounts.Where(a => a.Use != GlueUse.LeftOver).Select(a => a.Kg);
    }

    [Fact]
    public void AClothThatIsOnIsNotWettedAgain()
    {
        Job job = GluedLaunch.Job(3);
        PlankId[] inner =
        [
            .. DemoPlans
                .Of("survey-launch")
                .PlankLayers.First()
                .Starboard.Concat(DemoPlans.Of("survey-launch").PlankLayers.First().Port)
                .Select(p => p.Id),
        ];
        var done = new GlueProgress([
            .. inner.Select(p => new GlueDone(p, null, p.Side, 900)),
            new(null, "core cloth", Side.Starboard, 5000),
            new(null, "core cloth", Side.Port, 5100),
        ]);
        BottomPlan plan = Planned(job with { Glue = job.Glue! with { Done = done } });
        GlueStage cloth = plan.Glue!.Stages.Single(s => s.Layer == "core cloth");
        Assert.Empty(cloth.Batches);
        Assert.Equal((5000, 5100), cloth.OnAt);
        GlueStage outer = plan.Glue.Stages.Single(s => s.Layer == "outer");
        Assert.NotEmpty(outer.Batches);
        Assert.All(outer.Batches, b => Assert.True(b.MixAt >= 5100));
    }

    /// <summary>Where planks lie on the cloth already the rest of the skin bonds to it as the first did: within the recoat window, or after cure, keying and drying.</summary>
    [Fact]
    public void ASkinBegunOnClothKeepsTheClothsClocks()
    {
        Job job = GluedLaunch.Job(3);
        PlankLayerPlan[] layers = [.. DemoPlans.Of("survey-launch").PlankLayers];
        GlueDone[] before =
        [
            .. layers[0]
                .Starboard.Concat(layers[0].Port)
                .Select(p => new GlueDone(p.Id, null, p.Side, 900)),
            new(null, "core cloth", Side.Starboard, 5000),
            new(null, "core cloth", Side.Port, 5100),
        ];
        GlueStage Outer(params GlueDone[] more) =>
            Planned(job with { Glue = job.Glue! with { Done = new([.. before, .. more]) } })
                .Glue!.Stages.Single(s => s.Layer == "outer");
        GlueStage bare = Outer();
        PlankTimes first = bare.Batches.SelectMany(b => b.Planks).MinBy(p => p.DoneAt);
        GlueStage begun = Outer(new GlueDone(first.Id, null, first.Id.Side, 5150));
        // Those of the cloth stand before the rest as well, and none of it is mixed sooner than they allow.
        double? notBefore = begun.Before.Max(h => h.NotBefore);
        Assert.NotNull(notBefore);
        Assert.True(notBefore > 5100);
        Assert.All(begun.Batches, b => Assert.True(b.MixAt >= notBefore - 1e-6));
        Assert.Contains(
            begun.Before,
            h => h.What.Contains("still to come", StringComparison.Ordinal)
        );
        Assert.DoesNotContain(begun.Batches.SelectMany(b => b.Planks), p => p.Id == first.Id);
    }

    /// <summary>
    /// A skin over a cloth that no session wets out, since the job has glue and no resin, or since nothing says what it is cut from: planned as if nothing lay there it would be
    /// glued on cloth of which nobody knows whether it has cured. It is told, and what is down already stays.
    /// </summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void ASkinOverAClothWithoutASessionIsNotPlanned(bool hasResin)
    {
        Job job = GluedLaunch.Job(3);
        GlueSpec spec = job.Glue! with { WeaveGsm = null, Fairing = new(0.8, 0.3), Fillets = [] };
        job = hasResin
            ? job with
            {
                Glue = spec,
                Sheathing = [],
            }
            : job with
            {
                Glue = spec with { Resin = null, Glue = spec.BetweenLayers },
            };
        BottomPlan plan = Planned(job);
        GluePlan glue = plan.Glue!;
        Assert.Equal(["outer", "fairing"], glue.NotPlanned);
        Assert.Contains(
            glue.Findings,
            f =>
                f.Where.Contains("core cloth", StringComparison.Ordinal)
                && f.Message.Contains("outer, fairing come after it", StringComparison.Ordinal)
        );
        Assert.NotEmpty(glue.Stages.Single(s => s.Layer == "inner").Batches);
        Assert.DoesNotContain(glue.Stages, s => s.Layer is "outer" or "fairing");
        // Once all of it is down there is nothing to plan on the cloth.
        GluePlan down = Planned(
            job with
            {
                Glue = job.Glue! with
                {
                    Done = new([
                        .. plan
                            .PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port))
                            .Select(p => new GlueDone(p.Id, null, p.Id.Side, 900)),
                    ]),
                },
            }
        ).Glue!;
        Assert.Empty(down.Stages.Single(s => s.Layer == "outer").Batches);
        Assert.Empty(down.NotPlanned.Remove("fairing"));
    }

    [Fact]
    public void TheFileIsReadWithItsLines()
    {
        ImmutableArray<LayerSpec> layers = DemoPlans.Of("survey-launch").Job.Layers;
        (GlueProgress progress, ImmutableArray<Finding> findings) = ProgressText.Read(
            "id,done-at,batch,temperature\nS1-20..S1-22,\"day 2, 11:57\",B07,64 F\ncore cloth port,day 3 08:05,,\n",
            "progress.csv",
            layers
        );
        Assert.Empty(findings);
        Assert.Equal(4, progress.Rows.Length);
        Assert.Equal(1440 + 717, progress.Rows[2].At);
        Assert.Equal(17.78, progress.Rows[0].Celsius!.Value, 0.01);
        Assert.Equal(7, progress.LastBatch);
        Assert.Equal(2880 + 485, progress.WettedAt("core cloth", Side.Port));
        Assert.Null(progress.WettedAt("core cloth", Side.Starboard));
    }

    [Theory]
    [InlineData("S1-20,11:57,,", "line 2, done-at")]
    [InlineData("S1-2x,day 1 11:57,,", "line 2, id")]
    [InlineData("core cloth,day 1 11:57,,", "line 2, id")]
    [InlineData("S1-20,day 1 11:57,,warm", "line 2, temperature")]
    public void WhatIsWrongIsToldAtItsCell(string row, string where)
    {
        (_, ImmutableArray<Finding> findings) = ProgressText.Read(
            $"id,done-at,batch,temperature\n{row}\n",
            "progress.csv",
            DemoPlans.Of("survey-launch").Job.Layers
        );
        Assert.Contains(where, Assert.Single(findings).Where, StringComparison.Ordinal);
    }

    private static BottomPlan Planned(Job job) => GluedLaunch.Of(job);
}
