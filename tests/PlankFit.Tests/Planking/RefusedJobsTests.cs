using CsCheck;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Geometry;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking;

/// <summary>Jobs that cannot be planked say why, where, and what to do; nothing that a job holds is an exception.</summary>
public sealed class RefusedJobsTests
{
    [Fact]
    public void AnAngleThatNeverReachesTheChine() =>
        Refused(With(l => l with { AngleDegrees = 5 }), "layer inner", "give a larger `angle`");

    [Fact]
    public void StockWiderThanTheBottom() =>
        Refused(With(l => l with { WidthMm = 1500 }), "layer inner", "wider than the bottom");

    [Fact]
    public void AMasterOffTheBottom() =>
        Refused(With(l => l with { MasterMm = 12000 }), "layer inner", "is off the bottom");

    [Fact]
    public void ALayerTooThickForItsCurvature()
    {
        // A section with a camber of 20 mm radius between keel and chine, and a layer of 30 mm laid inside it.
        double[] x = [0, 500, 1000, 1500, 2000];
        OffsetLine Line(string name, double y, double z) =>
            new(name, [], [.. x.Select(_ => (double?)z)], [.. x.Select(_ => (double?)y)]);
        var planking = new PlankingJob(
            LengthUnit.Millimetre,
            new(
                [.. x.Select((a, i) => new Station($"{i}", a))],
                [Line("keel", 0, 0), Line("b", 28, 6), Line("chine", 40, 30)]
            ),
            new("keel", "chine", ["b"], OffsetsAreTo.Outside, KeelSide.Plumb),
            [PlankLayer.Of("thick", 60, 20, Heads.Aft, 45, null, Hold.Width, 7.5, 0.5, null)],
            EndRules.Default,
            BendLimits.Default
        );
        var job = new Job(planking);
        Refused(job, "layer thick", "too thick for its curvature");
    }

    [Fact]
    public void NoLayerOfPlanks() =>
        Refused(
            LoftTests.Demo("tender") with
            {
                Layers = [new ClothLayerSpec("cloth", 1)],
            },
            "job",
            "no layer of planks"
        );

    /// <summary>
    /// On tables with a dent planks of 20 mm stock curl by more than their own width: a fault of the job, and once an exception of the arithmetic. What such planks do hangs
    /// on a hair, so which of the tables it is told of does too.
    /// </summary>
    [Fact]
    public void PlanksThatCurlByMoreThanTheirWidth()
    {
        PlanResult[] results =
        [
            .. new[]
            {
                (70.4, -36),
                (71, -37.864191598486855),
                (70.40074005568289, -37.864191598486855),
            }.Select(t =>
                BottomPlanner.Plan(
                    Odd((1d / 53, 0), (t.Item1, 12, 0), (1, t.Item2)),
                    null,
                    TestContext.Current.CancellationToken
                )
            ),
        ];
        Assert.All(results, r => Assert.True(r.Plan is not null || r.Findings.Length > 0));
        Assert.Contains(
            results.SelectMany(r => r.Findings),
            f => f.Message.Contains("however narrow it is laid", StringComparison.Ordinal)
        );
    }

    private static Job Odd(
        (double Thickness, double Width) stock,
        (double Angle, double Master, double Drift) law,
        (int Station, double Bump) chineAt
    )
    {
        Job demo = LoftTests.Demo("tender");
        PlankLayerSpec layer = PlankLayer.Of(
            "odd",
            Math.Abs(stock.Thickness) + 0.1,
            Math.Abs(stock.Width) + 20,
            Heads.Aft,
            Math.Clamp(law.Angle, 0.5, 179.5),
            law.Master,
            Hold.Width,
            law.Drift,
            0.5,
            null
        );
        OffsetLine chine = demo.Offsets.Find("chine")!;
        OffsetLine bumped = chine with
        {
            HalfBreadthsMm = chine.HalfBreadthsMm.SetItem(
                chineAt.Station,
                Math.Abs(chine.HalfBreadthsMm[chineAt.Station]!.Value + chineAt.Bump)
            ),
        };
        return demo with
        {
            Layers = [layer],
            Offsets = new(demo.Offsets.Stations, [demo.Offsets.Find("keel edge")!, bumped]),
        };
    }

    /// <summary>Silly jobs by chance: a plan or findings, never an exception, never long.</summary>
    [Fact]
    public void NoJobThrows()
    {
        Gen.Select(
                Gen.Double[-50, 400],
                Gen.Double[-20, 3000],
                Gen.Double[-10, 200],
                Gen.Double[-3000, 9000],
                Gen.Double[0, 60],
                Gen.Double[-400, 400],
                Gen.Int[0, 9]
            )
            .Sample(
                (thickness, width, angle, master, drift, bump, station) =>
                {
                    Job job = Odd((thickness, width), (angle, master, drift), (station, bump));
                    PlanResult result = BottomPlanner.Plan(job);
                    return result.Plan is not null
                        || result.Findings.Any(f =>
                            f.Severity == Severity.Error && f.Message.Length > 20
                        );
                },
                iter: LongRuns.Of(100, 800)
            );
    }

    [Fact]
    public void AStopIsHeeded()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() =>
            BottomPlanner.Plan(LoftTests.Demo("tender"), null, stop.Token)
        );
    }

    private static Job With(Func<PlankLayerSpec, PlankLayerSpec> change)
    {
        Job job = LoftTests.Demo("survey-launch");
        return job with
        {
            Layers = [.. job.Layers.Select(l => l is PlankLayerSpec p ? change(p) : l)],
        };
    }

    private static void Refused(Job job, string where, string says)
    {
        PlanResult result = BottomPlanner.Plan(job);
        Assert.Null(result.Plan);
        // Every layer has the fault, and each is told of its own.
        Assert.All(
            result.Findings,
            f => Assert.Contains(says, f.Message, StringComparison.Ordinal)
        );
        Finding fault = Assert.Single(result.Findings, f => f.Where == where);
        Assert.Equal(Severity.Error, fault.Severity);
    }
}
