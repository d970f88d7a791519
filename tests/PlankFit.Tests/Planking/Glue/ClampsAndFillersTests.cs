using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Structure;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>What holds planks until the glue has cured, counted, and what the glue is thickened with, weighed.</summary>
public sealed class ClampsAndFillersTests
{
    [Theory]
    [InlineData(1835, 300, 8)]
    [InlineData(300, 300, 2)]
    [InlineData(300.1, 300, 3)]
    [InlineData(40, 300, 2)]
    public void BothEndsAndNoneFurtherApart(double length, double every, int clamps) =>
        Assert.Equal(clamps, ClampCounts.Along(length, every));

    /// <summary>In a shop that keeps 20 degrees, by hand: each plank's clamps are on from its batch's first plank until the glue's one curing time after the last is down.</summary>
    [Fact]
    public void EachSessionHasItsClampsAndThoseThatAreStillOn()
    {
        BottomPlan plan = Planned(c => c with { HeldBy = "spring clamps", ClampsOnHand = 3 });
        GluePlan glue = plan.Glue!;
        double every = plan.Job.Timber?.ClampSpacingMm ?? 300,
            cure = glue.Spec.BetweenLayers!.Clocks.Sandable!.Minutes(20);
        var planks = plan
            .PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port))
            .ToDictionary(p => p.Id);
        int Wanted(GlueBatch batch) =>
            batch.Planks.Sum(p => 1 + (int)Math.Ceiling(planks[p.Id].CutLengthMm / every));
        int more = 0;
        foreach (GlueSession session in glue.Sessions)
        {
            SessionClamps told = ClampCounts.Of(glue)(session);
            Assert.Equal(session.Batches.Sum(Wanted), told.PutOn);
            int most = 0;
            for (double at = session.From; at <= session.To; at++)
            {
                most = Math.Max(
                    most,
                    glue.Batches.Where(b =>
                            !b.Planks.IsEmpty
                            && b.Planks[0].SetAt <= at
                            && at < b.Clocks.DownAt + cure
                        )
                        .Sum(Wanted)
                );
            }

            if (told.PutOn > 0)
            {
                // Steps of a minute miss no more than one batch.
                Assert.InRange(told.AtOnce, most, most + session.Batches.Max(Wanted));
                more += told.AtOnce > told.PutOn ? 1 : 0;
            }
        }

        Assert.True(more > 0, "no session begins before the clamps of the one before are off");
        Assert.Contains(
            glue.Findings,
            f =>
                f.Message.Contains("3 are on hand", StringComparison.Ordinal)
                && f.About.Key == "crew.clamps-on-hand"
        );
    }

    [Fact]
    public void BattensLieOverSeveralPlanksAndFasteningsHoldByThemselves()
    {
        int each = Clamps(c => c with { HeldBy = "clamps" }),
            over = Clamps(c => c with { HeldBy = "battens", HoldsPlanks = 3 });
        Assert.InRange(over, each / 3, 2 * each / 3);
        Assert.Equal(5 + 2, ClampCounts.Over([900, 600, 1200, 300], 300, 3));
        // The launch is fastened: where nothing else is named only corner pieces that no fastening reaches are clamped, at both ends.
        BottomPlan launch = Planned(c => c with { HeldBy = null });
        Assert.Equal(
            2
                * launch
                    .PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port))
                    .Count(p => launch.Fastenings!.On(p.Id)?.Points.IsEmpty ?? true),
            launch.Glue!.Batches.Sum(b => b.Clamps)
        );

        static int Clamps(Func<CrewSpec, CrewSpec> with) =>
            Planned(with).Glue!.Batches.Sum(b => b.Clamps);
    }

    /// <summary>60 g to a kg of glue; of fairing a litre holds 1/(1/1.09 + 0.25/0.2) kg of mix.</summary>
    [Fact]
    public void FillersAreWeighedAndTakeTheirVolume()
    {
        Job job = GluedLaunch.Job(3);
        GlueSpec spec = job.Glue! with
        {
            Fairing = new(0.8, 0.3),
            Fillers =
            [
                new("silica", FillerInto.Glue, new(40, 60, 90)) { PricePerKg = 30 },
                new("hollow glass", FillerInto.Fairing, new(150, 250, 350)) { KgPerLitre = 0.2 },
            ],
        };
        BottomPlan plan = GluedLaunch.Of(job with { Glue = spec });
        GluePlan glue = plan.Glue!;
        AmountLine between = glue.Amounts.First(a => a.Use == GlueUse.BetweenLayers),
            fairing = glue.Amounts.Single(a => a.Use == GlueUse.Fairing);
        FillerAmount silica = Assert.Single(between.Fillers);
        Assert.Equal(0.060 * between.Kg.Usual, silica.Kg.Usual, 1e-12);
        Assert.Equal(0.040 * between.Kg.Least, silica.Kg.Least, 1e-12);
        Assert.Equal(0.090 * between.Kg.Most, silica.Kg.Most, 1e-12);
        Assert.Equal(
            fairing.AreaMm2
                / 1e6
                * 0.8
                / ((1 / fairing.Mix.Ratio.KgPerLitre) + (0.25 / 0.2))
                * (1 + fairing.Mix.Waste),
            fairing.Kg.Usual,
            1e-9
        );
        Assert.Empty(glue.Amounts.First(a => a.Use == GlueUse.WettingOut).Fillers);
        BillRow[] bill = [.. plan.Structure!.Bill.Where(r => r.Kind == "filler")];
        Assert.Equal(["silica", "hollow glass"], bill.Select(r => r.Item));
        double most = glue.Fillers[0].Likely.Most;
        Assert.Equal(most, bill[0].Amount, 1e-12);
        Assert.Equal(30 * most, bill[0].Cost!.Value, 1e-9);
        Assert.Contains("60 (40 to 90) g of it to a kg", bill[0].Source, StringComparison.Ordinal);
    }

    /// <summary>A filler for fairing or fillets that the job does not have is told and not passed over.</summary>
    [Fact]
    public void AFillerForNothingIsTold()
    {
        Job job = GluedLaunch.Job(3);
        string[] Told(FairingSpec? fairing, params FilletSpec[] fillets) =>
            [
                .. GluedLaunch
                    .Of(
                        job with
                        {
                            Glue = job.Glue! with
                            {
                                Fairing = fairing,
                                Fillets = [.. fillets],
                                Fillers =
                                [
                                    new("fibres", FillerInto.Fillets, new(40, 60, 90)),
                                    new("hollow glass", FillerInto.Fairing, new(150, 250, 350)),
                                    new("silica", FillerInto.Glue, new(40, 60, 90)),
                                ],
                            },
                        }
                    )
                    .Glue!.Findings.Where(f => f.Where.Contains("filler", StringComparison.Ordinal))
                    .Select(f => f.Message.Split(" goes into ")[0]),
            ];
        Assert.Equal(["fibres", "hollow glass"], Told(null));
        Assert.Equal(["fibres"], Told(new(0.8, 0.3)));
        Assert.Empty(Told(new(0.8, 0.3), new FilletSpec("a corner", new(12, 90), 800)));
    }

    /// <summary>A shop outside what a data sheet gives: told once for all its clocks, and not clock by clock.</summary>
    [Fact]
    public void AShopOutsideTheDataSheetIsToldOnce()
    {
        Job job = GluedLaunch.Job(3);
        GlueSpec spec = job.Glue!;
        GluePlan glue = GluedLaunch
            .Of(
                job with
                {
                    Glue = spec with
                    {
                        Glue = null,
                        Clock = spec.Clock! with
                        {
                            Temperature = new([(0, spec.Resin!.Clocks.Pot.WarmestCelsius + 8)]),
                        },
                    },
                }
            )
            .Glue!;
        string told = Assert
            .Single(glue.Findings, f => f.Message.Contains("are a guess", StringComparison.Ordinal))
            .Message;
        Assert.StartsWith("pot, film, sandable", told, StringComparison.Ordinal);
    }

    /// <summary>Coats over a weave that no layer has are told as not reckoned.</summary>
    [Fact]
    public void CoatsOverPlanksAreNamedAndNotPassedOver()
    {
        Job job = GluedLaunch.Job(3);
        GluePlan With(Estimate? weave) =>
            GluedLaunch.Of(job with { Glue = job.Glue! with { WeaveGsm = weave } }).Glue!;
        Assert.DoesNotContain(With(null).Findings, f => f.Where == "[weave]");

        GluePlan asked = With(new(100, 200, 300));
        Assert.Contains(
            "outer, the outermost layer, is of planks: they are not reckoned",
            Assert.Single(asked.Findings, f => f.Where == "[weave]").Message,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain(asked.Amounts, a => a.Use == GlueUse.Weave);
    }

    /// <summary>Glue is told as a film, as a mass on an area and as what a volume weighs, and the three agree: mm times kg a litre is kg on a square metre.</summary>
    [Fact]
    public void WhatAFilmWeighsOnAnAreaStandsBesideIt()
    {
        Job job = GluedLaunch.Job(3);
        GluePlan glue = GluedLaunch.Of(job).Glue!;
        AmountLine line = glue.Amounts.First(a => a.Use == GlueUse.BetweenLayers);
        double gsm = line.Kg.Usual / (1 + line.Mix.Waste) / (line.AreaMm2 / 1e6) * 1000;
        string told = line.Rate[(line.Rate.IndexOf(" is ", StringComparison.Ordinal) + 4)..];
        Assert.Equal(
            gsm,
            double.Parse(told.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture),
            0.51
        );
        Assert.Contains(") g/m² of resin and hardener: lift", line.Rate, StringComparison.Ordinal);
    }

    /// <summary>What small batches leave over is thickened with them: the order has all the filler that the cards ask for.</summary>
    [Fact]
    public void WhatIsLeftOverIsThickenedToo()
    {
        Job job = GluedLaunch.Job(3);
        GlueSpec spec = job.Glue! with
        {
            Fillers = [new("silica", FillerInto.Glue, new(40, 60, 90))],
            Crew = job.Glue.Crew! with { LeastGrams = 250 },
        };
        GluePlan glue = GluedLaunch.Of(job with { Glue = spec }).Glue!;
        AmountLine[] left =
        [
            .. glue.Amounts.Where(a =>
                a.Use == GlueUse.LeftOver
                && glue.Stages.Any(s => s.Layer == a.Where && s.Use == GlueUse.BetweenLayers)
            ),
        ];
        Assert.NotEmpty(left);
        Assert.All(
            left,
            a => Assert.Equal(0.060 * a.Kg.Usual, Assert.Single(a.Fillers).Kg.Usual, 1e-12)
        );
        Assert.All(
            glue.Amounts.Where(a =>
                a.Use == GlueUse.LeftOver && glue.Stages.Any(s => s.Layer == a.Where && s.IsCloth)
            ),
            a => Assert.Empty(a.Fillers)
        );
    }

    /// <summary>Where no clock says when glue has cured a skin's clamps are off when the next stage is begun, and not on for ever.</summary>
    [Fact]
    public void WithoutACureClampsAreOffWhenTheNextStageBegins()
    {
        BottomPlan plan = Planned(
            c => c with { HeldBy = "clamps" },
            m => m with { Clocks = m.Clocks with { Sandable = null } }
        );
        GluePlan glue = plan.Glue!;
        GlueSession[] skins = [.. glue.Sessions.Where(s => s.Use == GlueUse.BetweenLayers)];
        Assert.Equal(2, skins.Select(s => s.Layer).Distinct().Count());
        int on = 0;
        string layer = "";
        foreach (GlueSession session in skins)
        {
            SessionClamps told = ClampCounts.Of(glue)(session);
            on = (session.Layer == layer ? on : 0) + told.PutOn;
            layer = session.Layer;
            Assert.Equal(on, told.AtOnce);
        }
    }

    private static BottomPlan Planned(Func<CrewSpec, CrewSpec> with, Func<Mix, Mix>? glue = null)
    {
        Job job = GluedLaunch.Job(3);
        GlueSpec spec = job.Glue!;
        if (glue is not null)
        {
            // Cloth keeps its own clocks.
            spec = spec with
            {
                Glue = glue(spec.BetweenLayers!),
            };
        }

        return GluedLaunch.Of(
            job with
            {
                Glue = spec with
                {
                    Crew = with(spec.Crew! with { HoldsPlanks = 1 }),
                    Clock = spec.Clock! with { Temperature = new([(0, 20)]) },
                },
            }
        );
    }
}
