using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Glue;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>The weave of the outermost cloth is filled coat by coat, each on the one before while that bonds, or keyed.</summary>
public sealed class WeaveTests
{
    private static readonly DayTemperature Even = new([(0, 20)]);

    /// <summary>Lasts so many minutes at any temperature.</summary>
    private static ClockLaw Always(double minutes) =>
        ClockLaw.Through([new(10, minutes), new(30, minutes)])!;

    private static ClockWindow Window(double from, double to) => new(Always(from), Always(to));

    /// <summary>The launch with a cloth outside, a crew that is quick, and clocks by hand.</summary>
    private static Job Job(ClockWindow? recoat, int coats = 2)
    {
        Job launch = DemoPlans.Of("survey-launch").Job;
        var resin = new Mix(
            "resin",
            new(2, 1.15, 0.97),
            new(
                ClockLaw.Through([new(10, 60, 100), new(30, 60, 100), new(10, 60, 1000)])!,
                Always(120)
            )
            {
                Tacky = Window(100, 400),
                Recoat = recoat,
                Sandable = Always(1200),
            }
        )
        {
            Waste = 0.1,
        };
        return launch with
        {
            Planking = launch.Planking with
            {
                Layers =
                [
                    .. launch.Layers.OfType<PlankLayerSpec>(),
                    new ClothLayerSpec("outside", 0.5),
                ],
            },
            Joints = null,
            Fastenings = null,
            SettingUp = null,
            Glue = new(resin, null)
            {
                WeaveGsm = new(100, 200, 300),
                WeaveCoats = coats,
                Crew = new(4) { WetMinutesPerM2 = 2, TrimMinutesPerM = 0.5 },
                Clock = new([(0, 1440)], Even),
            },
            Cloths =
            [
                new("light", ClothKind.Woven, 200, [0, 90], [new(1270, 50000)])
                {
                    GlassContent = new(0.4, 0.5, 0.55),
                    MatGlassContent = new(0.25, 0.3, 0.35),
                    LocksAtDegrees = 40,
                },
            ],
            Sheathing = [new("outside", "light") { Keel = new ClothAtKeel.PastCentreLine(0) }],
        };
    }

    /// <summary>Whose planks and cloth are those of every job here.</summary>
    private static readonly Lazy<BottomPlan> Laid = new(() =>
        BottomPlanner.Plan(Job(Window(240, 2000)) with { Glue = null }).Plan!
    );

    private static GluePlan Planned(Job job)
    {
        PlanResult result = BottomPlanner.Again(Laid.Value, job);
        Assert.True(
            result.Plan is not null,
            string.Join("\n", result.Findings.Select(f => $"{f.Where}: {f.Message}"))
        );
        GlueLaws.Hold(result.Plan);
        return result.Plan.Glue!;
    }

    /// <summary>By hand: each coat begins when the one before has stood its least, and together they have what the list of resin has.</summary>
    [Fact]
    public void CoatsFollowWhileTheOneBeforeBonds()
    {
        GluePlan glue = Planned(Job(Window(240, 2000)));
        GlueStage[] coats = [.. glue.Stages.Where(s => s.Coat > 0)];
        Assert.Equal([1, 2], coats.Select(c => c.Coat));
        Assert.Equal("weave coat 2 of 2, outside", coats[1].Layer);
        GlueStage cloth = glue.Stages.Single(s => s is { IsCloth: true, Coat: 0 });
        foreach ((GlueStage under, GlueStage coat) in coats.Prepend(cloth).Zip(coats))
        {
            Assert.Equal(
                Math.Max(under.OnAt!.Value.Last + 240, under.ReadyAt),
                coat.Batches.Min(b => b.MixAt),
                1.0
            );
            Assert.True(coat.Batches.Max(b => b.Clocks.OutAt) <= under.OnAt.Value.First + 2000);
            Assert.Contains(
                coat.Before,
                h => h.What.Contains("still bonds", StringComparison.Ordinal)
            );
        }

        double mixed = coats.Sum(c => c.Batches.Sum(b => b.Grams));
        AmountLine weave = Assert.Single(glue.Amounts, a => a.Use == GlueUse.Weave);
        Assert.Equal(1000 * weave.Kg.Usual, mixed, 1e-6 * mixed);
        Assert.Equal(1.1 * 0.2 * weave.AreaMm2 / 1e6, weave.Kg.Usual, 1e-9);
        Assert.DoesNotContain(
            cloth.After,
            h => h.What.StartsWith("cured", StringComparison.Ordinal)
        );
        Assert.Equal(
            Math.Ceiling(coats[1].OnAt!.Value.Last + 1200),
            Math.Ceiling(coats[1].After.Max(h => h.NotBefore ?? 0)),
            1.0
        );
        Assert.Equal(coats.Length, glue.Sessions.Count(s => s.IsCoat));
    }

    /// <summary>No window on the data sheet, or one too short for both sides: cured, washed, keyed and dry first.</summary>
    [Theory]
    [InlineData(null)]
    [InlineData(260)]
    public void WhatBondsNoMoreIsKeyed(int? to)
    {
        Job job = Job(to is { } t ? Window(250, t) : null, coats: 1);
        GluePlan glue = Planned(job);
        GlueStage cloth = glue.Stages.Single(s => s is { IsCloth: true, Coat: 0 }),
            coat = glue.Stages.Single(s => s.Coat == 1);
        double cured = cloth.OnAt!.Value.Last + 1200,
            keyed = cured + (coat.Batches.Sum(b => b.ClothMm2) / 1e6 * 10 / 4);
        Assert.Equal(keyed + 60, coat.Batches.Min(b => b.MixAt), 2.0);
        Assert.Contains(coat.Before, h => h.What.StartsWith("keyed", StringComparison.Ordinal));
    }

    /// <summary>A coat that is on is not rolled again, and the other side follows it.</summary>
    [Fact]
    public void ACoatThatIsOnStays()
    {
        Job job = Job(Window(240, 2000));
        PlankId[] planks =
        [
            .. DemoPlans
                .Of("survey-launch")
                .PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port))
                .Select(p => p.Id),
        ];
        ImmutableArray<LayerSpec> layers = job.Layers;
        (GlueProgress read, ImmutableArray<Finding> findings) = ProgressText.Read(
            "id,done-at\noutside starboard,\"day 3, 08:00\"\noutside port,\"day 3, 09:00\"\noutside coat 1 starboard,\"day 3, 14:00\"\n",
            "progress.csv",
            layers
        );
        Assert.Empty(findings);
        var done = new GlueProgress([
            .. planks.Select(p => new GlueDone(p, null, p.Side, 900)),
            .. read.Rows,
        ]);
        GluePlan glue = Planned(job with { Glue = job.Glue! with { Done = done } });
        GlueStage first = glue.Stages.Single(s => s.Coat == 1);
        Assert.All(first.Batches, b => Assert.Equal(Side.Port, b.Side));
        Assert.True(first.Batches.Min(b => b.MixAt) >= (2 * 1440) + (14 * 60));
        Assert.Equal(
            2,
            glue.Stages.Single(s => s.Coat == 2).Batches.Select(b => b.Side).Distinct().Count()
        );
    }

    /// <summary>A pot that lasts for no batch: the coats are named among what has no session.</summary>
    [Fact]
    public void ACoatWithoutATimeIsTold()
    {
        Job job = Job(Window(240, 2000));
        job = job with
        {
            Glue = job.Glue! with { Crew = job.Glue.Crew! with { CoatMinutesPerM2 = 5000 } },
        };
        GluePlan glue = Planned(job);
        Assert.Equal(["weave coat 1 of 2, outside", "weave coat 2 of 2, outside"], glue.NotPlanned);
        Assert.Contains(
            glue.Findings,
            f => f.Where.Contains("weave coat 1", StringComparison.Ordinal)
        );
    }

    /// <summary>Under a coat or a fairing that is on lie the cloth and the coats before it: on, at an hour that is not known, so that what follows is keyed.</summary>
    [Theory]
    [InlineData("outside coat 1 starboard", 0, "weave coat 2 of 2, outside")]
    [InlineData("fairing port", 2, "fairing")]
    public void WhatLiesUnderWhatIsOnIsOn(string row, int coatsUnder, string next)
    {
        Job job = Job(Window(240, 100_000));
        job = job with { Glue = job.Glue! with { Fairing = new(0.8, 0.3) } };
        (GlueProgress read, _) = ProgressText.Read(
            $"id,done-at\n{row},\"day 3, 14:00\"\n",
            "progress.csv",
            job.Layers
        );
        var done = new GlueProgress([
            .. Laid
                .Value.PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port))
                .Select(p => new GlueDone(p.Id, null, p.Id.Side, 900)),
            .. read.Rows,
        ]);
        GluePlan glue = Planned(job with { Glue = job.Glue! with { Done = done } });
        foreach (Side side in new[] { Side.Starboard, Side.Port })
        {
            for (int coat = 0; coat <= coatsUnder; coat++)
            {
                Assert.Equal(
                    (2 * 1440) + (14 * 60),
                    glue.Spec.Done.CoatedAt("outside", coat, side)
                );
            }
        }

        Assert.Empty(glue.Stages.Single(s => s.Layer == "outside").Batches);
        Assert.Contains(
            glue.Findings,
            f => f.Message.Contains("outside starboard, outside port", StringComparison.Ordinal)
        );
        GlueStage after = glue.Stages.Single(s => s.Layer == next);
        Assert.NotEmpty(after.Batches);
        if (coatsUnder > 0)
        {
            Assert.All(after.Batches, b => Assert.Equal(Side.Starboard, b.Side));
            Assert.Contains(after.Before, h => h.What == "the cloth has cured");
        }
        else
        {
            GlueStage first = glue.Stages.Single(s => s.Coat == 1);
            Assert.All(first.Batches, b => Assert.Equal(Side.Port, b.Side));
            Assert.Contains(first.Before, h => h.What == "the cloth has cured");
        }
    }

    /// <summary>Nothing says when the resin has cured: what would have to be keyed first is not planned, and the key is named.</summary>
    [Fact]
    public void WithoutItsCureNothingIsKeyed()
    {
        Job job = Job(null, coats: 1);
        Mix resin = job.Glue!.Resin!;
        GluePlan Without(Job of) =>
            Planned(
                of with
                {
                    Glue = of.Glue! with
                    {
                        Resin = of.Glue.Resin! with
                        {
                            Clocks = of.Glue.Resin.Clocks with { Sandable = null },
                        },
                    },
                }
            );
        Assert.NotNull(resin.Clocks.Sandable);
        GluePlan glue = Without(job);
        Assert.Equal(["weave coat 1 of 1, outside"], glue.NotPlanned);
        Assert.Contains(glue.Findings, f => f.About.Key == "resin.sandable");
        // While it bonds no cure is asked for; fairing is keyed in any case.
        Job bonds = Job(Window(240, 2000), coats: 1);
        Assert.Empty(Without(bonds).NotPlanned);
        GluePlan faired = Without(
            bonds with
            {
                Glue = bonds.Glue! with { Fairing = new(0.8, 0.3) },
            }
        );
        Assert.Equal(["fairing"], faired.NotPlanned);
        Assert.Contains(faired.Findings, f => f.About.Key == "resin.sandable");
    }

    /// <summary>Fairing lies on cloth that has cured, is washed, keyed and dry; on one that no session wets out it is not planned.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void FairingOnClothWaitsForTheCloth(bool hasSession)
    {
        Job job = Job(Window(240, 2000));
        GlueSpec spec = job.Glue! with
        {
            WeaveGsm = null,
            Fairing = new(0.8, 0.3),
            Fillets = [new("a corner", new(12, 90), 4000)],
        };
        GluePlan glue = Planned(
            job with
            {
                Glue = hasSession ? spec : spec with { Resin = null, Glue = spec.Resin },
            }
        );
        if (!hasSession)
        {
            Assert.Equal(["fairing", "fillet a corner"], glue.NotPlanned);
            Assert.Contains(
                glue.Findings,
                f => f.Message.Contains("fairing, fillet a corner", StringComparison.Ordinal)
            );
            return;
        }

        GlueStage cloth = glue.Stages.Single(s => s.IsCloth),
            fairing = glue.Stages.Single(s => s.Use == GlueUse.Fairing);
        double cured = Math.Ceiling(Math.Max(cloth.OnAt!.Value.Last + 1200, cloth.ReadyAt)),
            keyed =
                cured
                + (
                    2 * Laid.Value.PlankLayers.Last().AreaMm2 / 1e6 * spec.Crew!.KeyMinutesPerM2 / 4
                );
        Assert.Equal(keyed + 60, fairing.Batches.Min(b => b.MixAt), 2.0);
        Assert.Contains(fairing.Before, h => h.What == "the cloth has cured");
    }
}
