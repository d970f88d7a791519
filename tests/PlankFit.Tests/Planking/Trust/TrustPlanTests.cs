using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Trust;

/// <summary>What a job with [trust] is told of its planks, on the prism.</summary>
public sealed class TrustPlanTests
{
    private static readonly Job Asked = new(PrismTable.Job) { Trust = TrustSpec.Default };

    private static readonly Lazy<BottomPlan> Planned = new(() => Plan(Asked));

    /// <summary>33 planks: 1.645 standard deviations where one in twenty may come short, 2.966 where none may.</summary>
    [Fact]
    public void ToScribeIsReckonedFromHowSureTheLengthIs()
    {
        LayerTrust layer = Planned.Value.Trust!.Layers.Single();
        PlankTrust plank = layer.Planks[20];
        double sigma = plank.LengthMm!.Value / 1.96;
        Assert.Equal(1.6449 * sigma, plank.OneInTwentyMm!.Value, 1e-3);
        Assert.Equal(layer.NoneShortSigmas * sigma, plank.NoneShortMm!.Value, 1e-9);
        int told = layer.Planks.Count(p => !p.InPlace);
        Assert.Equal(
            1 - (0.05 / told),
            MathNet.Numerics.Distributions.Normal.CDF(0, 1, layer.NoneShortSigmas),
            1e-9
        );
        Assert.InRange(layer.NoneShortSigmas, 2.9, 3.2);
    }

    [Fact]
    public void CornerPiecesAreFittedInPlace()
    {
        LayerTrust layer = Planned.Value.Trust!.Layers.Single();
        Assert.True(layer.Planks[0].InPlace);
        Assert.True(layer.Planks[^1].InPlace);
        Assert.False(layer.Planks[^1].MayFitBothEnds);
    }

    [Fact]
    public void PortIsToldByItsTwin()
    {
        TrustPlan trust = Planned.Value.Trust!;
        PlankId id = trust.Layers.Single().Planks[7].Id;
        Assert.Same(trust.On(id), trust.On(id.Twin));
        Assert.Null(trust.On(id with { Panel = "T" }));
    }

    /// <summary>A table and frames true to a tenth leave planks that may be sawn to fit at both ends; the usual ones leave none here.</summary>
    [Fact]
    public void WhatIsSureMayBeSawnToFitAtBothEnds()
    {
        TrustSpec good = TrustSpec.Default with
        {
            ReadToMm = 0.1,
            FramesMadeWithinMm = 0.1,
            KeelMadeWithinMm = 0.1,
            Standing = new(0.1, 0.1, 0.1, 0.1),
            Bends = new(0.1, 0.1, 0.1, 0.2),
            StockWidthWithinMm = 0,
            StockThicknessWithinMm = 0,
        };
        Assert.All(
            Plan(Asked with { Trust = good }).Trust!.Layers.Single().Planks.Where(p => !p.InPlace),
            p => Assert.True(p.MayFitBothEnds)
        );
        Assert.DoesNotContain(Planned.Value.Trust!.Layers.Single().Planks, p => p.MayFitBothEnds);
    }

    /// <summary>Fit at both ends with too little to scribe, or left long by less than keeps all of a side from coming short: both are told before anything is sawn.</summary>
    [Theory]
    [InlineData(3, 0, "to scribe is not enough")]
    [InlineData(30, 0, "have to scribe is enough")]
    [InlineData(0, 2, "left long by less than keeps all of a side from coming short")]
    public void EndsAreJudged(double allowance, double leftLong, string told)
    {
        EndRule chine =
            leftLong > 0
                ? EndRule.LeftLong(leftLong)
                : EndRule.Fit with
                {
                    AllowanceMm = allowance,
                };
        PlankingJob job = PrismTable.Job with { Ends = EndRules.Default with { Upper = chine } };
        Assert.Contains(
            Plan(Asked with { Planking = job }).Findings,
            f =>
                f.Message.Contains(told, StringComparison.Ordinal)
                && f.Message.Contains("if [trust] is right", StringComparison.Ordinal)
        );
    }

    /// <summary>The place of its end is as sure as the end of a plank that is not sawn yet.</summary>
    [Theory]
    [InlineData("S1-20")]
    [InlineData("P1-21")]
    public void WhatASawnPlankLacksIsToldWithHowSureItIs(string id)
    {
        PlankingJob job = PrismTable.Job with
        {
            AsBuilt = PrismTable.Job.AsBuilt with { Sawn = [RecordsOfSawn.Of(Planned.Value, id)] },
        };
        BottomPlan plan = Plan(Asked with { Planking = job });
        PlankTrust trust = plan.Trust!.On(Named.Plank(id))!;
        string within = PlusMinus.Of(
            Math.Max(trust.InboardMm!.Value, trust.OutboardMm!.Value),
            plan.Job.Units
        );
        Finding told = Assert.Single(
            plan.Findings,
            f => f.Message.StartsWith($"{id}, sawn: ", StringComparison.Ordinal)
        );
        Assert.Equal(
            $"{id}, sawn: what an end of it lacks or has over is known within {within} at the most, in {id}, 19 times in 20, if [trust] is right: offer it up to its place before a piece is glued on or it is sawn anew",
            told.Message
        );
        Assert.DoesNotContain(
            Planned.Value.Findings,
            f => f.Message.Contains(", sawn: ", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void TooFewStationsForSwellingsAreTold()
    {
        TrustSpec spec = TrustSpec.Default with { Bends = LineBends.Default with { Over = 0.05 } };
        Assert.Contains(
            Plan(Asked with { Trust = spec }).Findings,
            f => f.Message.Contains("too few stations", StringComparison.Ordinal)
        );
        Assert.DoesNotContain(
            Planned.Value.Findings,
            f => f.Message.Contains("too few stations", StringComparison.Ordinal)
        );
    }

    /// <summary>What the planks hang on is worked out once for a table; another trust asks nothing of it.</summary>
    [Fact]
    public void AnotherTrustTakesTheSlopesOver()
    {
        BottomPlan plan = Planned.Value;
        BottomPlan again = BottomPlanner
            .Again(
                plan,
                Asked with
                {
                    Trust = TrustSpec.Default with { FramesMadeWithinMm = 5 },
                },
                null,
                TestContext.Current.CancellationToken
            )
            .Plan!;
        Assert.Same(plan.Trust!.Sureness.Slopes, again.Trust!.Sureness.Slopes);
        Assert.True(
            again.Trust.Layers[0].Planks[9].LengthMm > plan.Trust.Layers[0].Planks[9].LengthMm
        );
    }

    [Fact]
    public void WithoutTrustNothingIsTold()
    {
        BottomPlan plan = Plan(Asked with { Trust = null });
        Assert.Null(plan.Trust);
        Assert.DoesNotContain(
            plan.Findings,
            f => f.Message.Contains("trust", StringComparison.OrdinalIgnoreCase)
        );
    }

    /// <summary>Progress to the end, and a stop at once where it is asked for.</summary>
    [Fact]
    public void ItShowsProgressAndCanBeStopped()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() =>
            Sensitivities.Of(Planned.Value.Planked, null, stop.Token)
        );
        var told = new Told();
        Sensitivities.Of(Planned.Value.Planked, told, TestContext.Current.CancellationToken);
        Assert.Equal(1, told.Most);
    }

    [Theory]
    [InlineData(0.2, LengthUnit.Millimetre, "±1 mm")]
    [InlineData(2.0, LengthUnit.Millimetre, "±2 mm")]
    [InlineData(2.1, LengthUnit.Millimetre, "±2.5 mm")]
    [InlineData(0.2, LengthUnit.Foot, "±1/16\"")]
    [InlineData(3.1, LengthUnit.Foot, "±1/8\"")]
    [InlineData(3.3, LengthUnit.Inch, "±5/32\"")]
    public void ItIsToldUpToTheNextMarkAndNeverUnderAMillimetre(
        double mm,
        LengthUnit unit,
        string told
    ) => Assert.Equal(told, PlusMinus.Of(mm, unit));

    private static BottomPlan Plan(Job job) =>
        BottomPlanner.Plan(job, null, TestContext.Current.CancellationToken).Plan!;

    private sealed class Told : IProgress<PlankFit.Planking.Laying.PlanProgress>
    {
        private readonly Lock one = new();

        public double Most { get; private set; }

        public void Report(PlankFit.Planking.Laying.PlanProgress value)
        {
            lock (one)
            {
                Most = Math.Max(Most, value.Part);
            }
        }
    }
}
