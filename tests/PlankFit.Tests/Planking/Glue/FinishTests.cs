using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Glue;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>Fairing and fillets are stages of their own, after all layers: keyed ground, batches, hours and hold points.</summary>
public sealed class FinishTests
{
    private const string Along = "chine log, inside";

    private static GluePlan Planned(Func<GlueSpec, GlueSpec>? with = null)
    {
        Job job = GluedLaunch.Job(3);
        GlueSpec spec = job.Glue! with
        {
            Glue = null,
            WeaveGsm = null,
            Fairing = new(0.8, 0.3),
            Fillets = [new(Along, new(12, 110), 15000)],
            Fillers = [],
            Crew = new(4),
            Clock = new([(480, 720), (780, 1020)], new([(0, 20)])),
        };
        BottomPlan plan = GluedLaunch.Of(job with { Glue = with is null ? spec : with(spec) });
        GlueLaws.Hold(plan);
        return plan.Glue!;
    }

    /// <summary>By hand: a metre of fillet takes its section, a square metre of low places its depth; both sides alike, in the crew's minutes.</summary>
    [Fact]
    public void BothHaveBatchesThatAddUpAndTheirMinutes()
    {
        GluePlan glue = Planned();
        GlueStage fairing = glue.Stages[^2],
            fillet = glue.Stages[^1];
        Assert.Equal(
            [(GlueUse.Fairing, "fairing"), (GlueUse.Fillet, "fillet chine log, inside")],
            new[] { fairing, fillet }.Select(s => (s.Use, s.Layer))
        );
        double dense = glue.Spec.Resin!.Ratio.KgPerLitre,
            waste = 1 + glue.Spec.Resin.Waste;
        Assert.Equal(
            12.865291 / 144 * 144 * 15000 / 1e6 * dense * waste * 1000,
            fillet.Batches.Sum(b => b.Grams),
            0.01
        );
        double low = fairing.Batches.Sum(b => b.ClothMm2) / 1e6;
        // Three tenths of both sides.
        Assert.Equal(0.3 * 2 * GluedLaunch.Plan.PlankLayers.Last().AreaMm2 / 1e6, low, 1e-6);
        Assert.Equal(low, glue.Amounts.Single(a => a.Use == GlueUse.Fairing).AreaMm2 / 1e6, 1e-6);
        Assert.Equal(low * 0.8 * dense * waste * 1000, fairing.Batches.Sum(b => b.Grams), 1e-6);
        Assert.Equal(15000, fillet.Batches.Sum(b => b.LengthMm), 1e-6);
        Assert.All(
            fillet.Batches,
            b => Assert.Equal(4 + (b.LengthMm / 1000 * 3), b.Clocks.OutAt - b.MixAt, 1e-6)
        );
        Assert.All(
            fairing.Batches,
            b => Assert.Equal(4 + (b.ClothMm2 / 1e6 * 12), b.Clocks.OutAt - b.MixAt, 1e-6)
        );
        foreach (GlueStage stage in new[] { fairing, fillet })
        {
            foreach (Side side in new[] { Side.Starboard, Side.Port })
            {
                GlueBatch[] own = [.. stage.Batches.Where(b => b.Side == side)];
                Assert.Equal(Enumerable.Range(1, own.Length), own.Select(b => b.Course));
                Assert.Equal(
                    stage.Batches.Sum(b => b.Grams) / 2,
                    own.Sum(b => b.Grams),
                    stage.Use == GlueUse.Fillet ? 1e-6 : 1
                );
            }
        }
    }

    /// <summary>The skin or cloth below has cured, is washed, keyed and dry before; the filler has cured and is washed before it is sanded.</summary>
    [Fact]
    public void WhatIsUnderIsKeyedAndWhatIsLaidIsSanded()
    {
        GluePlan glue = Planned();
        GlueStage fairing = glue.Stages[^2],
            under = glue.Stages[^3];
        double cure = glue.Spec.Resin!.Clocks.Sandable!.Minutes(20),
            last = fairing.OnAt!.Value.Last;
        Assert.True(fairing.Batches.Min(b => b.MixAt) >= under.ReadyAt);
        Assert.Contains(fairing.After, h => h.What.Contains("washed", StringComparison.Ordinal));
        HoldPoint sanded = fairing.After.Single(h =>
            h.What.StartsWith("sanded", StringComparison.Ordinal)
        );
        // What is boarded takes its minutes, four hands at it, and only in the shifts.
        double left =
            fairing.Batches.Sum(b => b.ClothMm2) / 1e6 * glue.Spec.Crew!.BoardMinutesPerM2 / 4;
        double done = Math.Ceiling(last + cure);
        for (; left > 0; done++)
        {
            left -= done % 1440 is (>= 480 and < 720) or (>= 780 and < 1020) ? 1 : 0;
        }

        Assert.True(fairing.Batches.Sum(b => b.ClothMm2) > 1e6);
        Assert.Equal(done, sanded.NotBefore!.Value, 1.0);
        Assert.Equal(last + cure, fairing.After[0].NotBefore!.Value, 1.0);
        Assert.True(glue.Stages[^1].Batches.Min(b => b.MixAt) >= sanded.NotBefore);
        Assert.Contains(
            glue.Stages[^1].After,
            h => h.What.Contains("sanded", StringComparison.Ordinal)
        );
    }

    /// <summary>No shift holds a side of it in one: it goes on over several.</summary>
    [Fact]
    public void WhatNoShiftHoldsIsLaidInParts()
    {
        GluePlan glue = Planned(s => s with { Crew = s.Crew! with { FilletMinutesPerM = 60 } });
        GlueStage fillet = glue.Stages[^1];
        Assert.Equal(GlueUse.Fillet, fillet.Use);
        Assert.True(fillet.Batches.Max(b => b.MixAt) - fillet.Batches.Min(b => b.MixAt) > 1440);
        Assert.Equal(15000, fillet.Batches.Sum(b => b.LengthMm), 1e-6);
        Assert.Empty(glue.NotPlanned);
    }

    [Fact]
    public void WhatHasNoTimeIsTold()
    {
        GluePlan glue = Planned(s => s with { Crew = s.Crew! with { FairMinutesPerM2 = 60_000 } });
        Assert.Equal(["fairing", "fillet chine log, inside"], glue.NotPlanned);
        Assert.Contains(glue.Findings, f => f.Where.Contains("fairing", StringComparison.Ordinal));
    }

    [Fact]
    public void ASideThatIsLaidIsNotLaidAgain()
    {
        Job job = GluedLaunch.Job(3);
        (GlueProgress read, ImmutableArray<Finding> findings) = ProgressText.Read(
            "id,done-at\nfairing starboard,\"day 9, 10:00\"\n\"fillet chine log, inside port\",\"day 12, 11:00\"\nfillet stem port,\"day 12, 11:00\"\n",
            "progress.csv",
            job.Layers
        );
        Assert.Empty(findings);
        IEnumerable<Plank> planks = GluedLaunch.Plan.PlankLayers.SelectMany(l =>
            l.Starboard.Concat(l.Port)
        );
        GluePlan glue = Planned(s =>
            s with
            {
                Done = new([
                    .. planks.Select(p => new GlueDone(p.Id, null, p.Id.Side, 900)),
                    .. read.Rows,
                ]),
            }
        );
        Assert.All(glue.Stages[^2].Batches, b => Assert.Equal(Side.Port, b.Side));
        Assert.All(glue.Stages[^1].Batches, b => Assert.Equal(Side.Starboard, b.Side));
        Assert.True(glue.Stages[^2].Batches.Min(b => b.MixAt) >= (11 * 1440) + (11 * 60));
        Assert.Contains(
            glue.Findings,
            f => f.Message.Contains("fillet stem: laid by it", StringComparison.Ordinal)
        );
    }
}
