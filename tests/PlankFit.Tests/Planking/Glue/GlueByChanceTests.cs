using System.Globalization;
using System.Text.RegularExpressions;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>Gluing of jobs, crews, products and days by chance.</summary>
public sealed class GlueByChanceTests
{
    [Fact]
    public void NoClockNoOrderAndNoHandIsBroken()
    {
        int planned = 0,
            draws = LongRuns.Of(3, 200);
        for (int seed = 1; seed <= draws; seed++)
        {
            if (Plan(seed) is not { Glue: { } glue } plan)
            {
                continue;
            }

            GlueLaws.Hold(plan);
            planned += glue.Stages.Count(s => !s.Batches.IsEmpty);
            string[] missing =
            [
                .. plan.Job.Layers.Select(l => l.Name).Except(glue.Stages.Select(s => s.Layer)),
            ];
            // What is not planned is told.
            Assert.True(
                missing.Length == 0 || !glue.Findings.IsEmpty,
                $"{seed}: {string.Join(", ", missing)} is missing and nothing is said"
            );
        }

        Assert.True(planned > 0);
    }

    [Fact]
    public void BatchesAddUpToTheAmounts()
    {
        BottomPlan plan = Launch();
        GluePlan glue = plan.Glue!;
        GlueLaws.Hold(plan);
        foreach (GlueStage stage in glue.Stages)
        {
            // What is left over of small batches has its line.
            double mixed = stage.Batches.Sum(b => b.Grams) / 1000,
                reckoned = glue
                    .Amounts.Where(a =>
                        stage.Use switch
                        {
                            GlueUse.Weave or GlueUse.Fairing => a.Use == stage.Use
                                || (a.Use == GlueUse.LeftOver && a.Where == stage.Layer),
                            GlueUse.Fillet => stage.Layer == FilletSpec.StageOf(a.Where)
                                || (a.Use == GlueUse.LeftOver && a.Where == stage.Layer),
                            _ => a.Where == stage.Layer
                                && a.Use
                                    is not (GlueUse.Weave or GlueUse.Fillet or GlueUse.Fairing),
                        }
                    )
                    .Sum(a => a.Kg.Usual);
            reckoned /= stage.Use == GlueUse.Weave ? glue.Spec.WeaveCoats : 1;
            // Each plank's share is rounded to a tenth of a gram.
            Assert.Equal(reckoned, mixed, stage.Batches.Sum(b => b.Planks.Length) * 5.1e-5 + 1e-9);
        }
    }

    /// <summary>The glue of a skin by its area as the layer has it, which was found without its planks.</summary>
    [Fact]
    public void AreasAreThoseOfTheSurfaces()
    {
        BottomPlan plan = Launch();
        AmountLine glued = plan.Glue!.Amounts.Single(a => a.Use == GlueUse.BetweenLayers);
        double area = plan.PlankLayers.Last().AreaMm2 * 2;
        Assert.Equal(area, glued.AreaMm2, 5e-4 * area);
        AmountLine wet = plan.Glue!.Amounts.Single(a => a.Use == GlueUse.WettingOut);
        double cloth = plan.Sheathing!.Layers.Single().LaidMm2;
        Assert.Equal(cloth, wet.AreaMm2, 1e-9 * cloth);
        // It covers the keel as well.
        Assert.InRange(
            cloth,
            plan.PlankLayers.Sum(l => l.AreaMm2),
            1.15 * plan.PlankLayers.Sum(l => l.AreaMm2)
        );
    }

    [Fact]
    public void MetricAndImperialAgree()
    {
        GluePlan metric = GluedLaunch.Plan.Glue!,
            imperial = GluedLaunch.Imperial.Glue!;
        Assert.Equal(
            metric.Batches.Select(b => (b.Name, b.MixAt, b.Grams)),
            imperial.Batches.Select(b => (b.Name, b.MixAt, b.Grams))
        );
        Assert.Equal(metric.Amounts.Select(a => a.Kg), imperial.Amounts.Select(a => a.Kg));
        Assert.Equal(
            metric.Stages.Select(s => (s.Before.Length, s.After.Length)),
            imperial.Stages.Select(s => (s.Before.Length, s.After.Length))
        );
    }

    [Fact]
    public void WhatCannotBeGluedInTimeIsToldWithWhatWouldDo()
    {
        Job job = GluedLaunch.Job(1);
        GlueSpec spec = job.Glue!;
        GluePlan slow = Planned(
            job with
            {
                Glue = spec with { Crew = spec.Crew! with { FastenMinutes = 200 } },
            }
        ).Glue!;
        Assert.DoesNotContain(slow.Stages, s => !s.Batches.IsEmpty);
        Assert.Contains(
            slow.Findings,
            f => f.Message.Contains("the film gives", StringComparison.Ordinal)
        );
        GluePlan alone = Planned(
            job with
            {
                Glue = spec with { Crew = spec.Crew! with { Hands = 1 } },
            }
        ).Glue!;
        Assert.Contains(
            alone.Findings,
            f => f.Message.Contains("the crew has 1", StringComparison.Ordinal)
        );
    }

    /// <summary>A cloth that is tacky when nobody is there: what the finding says would do does, and half an hour less does not.</summary>
    [Fact]
    public void AClothThatCannotBeTrimmedIsToldWithHowMuchLongerAShiftWouldDo()
    {
        Job job = GluedLaunch.Job(3);
        GlueSpec spec = job.Glue!;
        GlueSpec mornings = spec with
        {
            Crew = new(4),
            Resin = spec.Resin! with
            {
                Clocks = spec.Resin.Clocks with
                {
                    Tacky = new(
                        ClockLaw.Through([new(15, 400), new(25, 300)])!,
                        ClockLaw.Through([new(15, 700), new(25, 600)])!
                    ),
                },
            },
            Clock = spec.Clock! with { Shifts = [(480, 720)] },
        };
        GluePlan never = Planned(job with { Glue = mornings }).Glue!;
        Assert.DoesNotContain(never.Stages, s => s.IsCloth);
        Finding told = Assert.Single(
            never.Findings.Where(f =>
                f.Message.Contains("cannot be laid", StringComparison.Ordinal)
            )
        );
        double longer = double.Parse(
            Regex.Match(told.Message, @"shift (\d+) minutes longer").Groups[1].Value,
            CultureInfo.InvariantCulture
        );
        Assert.True(Laid(longer));
        Assert.False(Laid(longer - 60));

        bool Laid(double minutes) =>
            Planned(
                job with
                {
                    Glue = mornings with
                    {
                        Clock = mornings.Clock! with { Shifts = [(480, 720 + minutes)] },
                    },
                }
            )
                .Glue!.Stages.Any(s => s.IsCloth);
    }

    private static BottomPlan Launch() => GluedLaunch.Plan;

    private static BottomPlan Planned(Job job) => GluedLaunch.Of(job);

    private static BottomPlan? Plan(int seed)
    {
        using var temp = new TempFolder();
        return JobReader.Read(ChanceJob.Write(seed, temp.Path)).Job is { } job
            ? BottomPlanner
                .Plan(ChanceGlue.Added(job, seed), null, TestContext.Current.CancellationToken)
                .Plan
            : null;
    }
}
