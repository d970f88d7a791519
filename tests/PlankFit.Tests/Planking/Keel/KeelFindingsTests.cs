using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Keel;

/// <summary>What is said of laps, stock, steep ends and stations that nobody measured.</summary>
public sealed class KeelFindingsTests
{
    /// <summary>Mitre of the second layer at 20 degrees, 19 mm of stack less a lap of 1: 40 + 19 tan 10 − 1 / tan 20 = 40.6 mm in the lap, by hand.</summary>
    [Theory]
    [InlineData(100, "reaches 9.5 mm beyond its edge at the narrowest", Severity.Warning)]
    [InlineData(60, "stops 10.5 mm short of its edge at the widest", Severity.Note)]
    public void ALapWiderOrNarrowerThanTheLayerIsTold(double width, string says, Severity severity)
    {
        Finding[] told = OfKeel(Job(lap: new(width, 2000, 4000)));
        Assert.Contains(
            told,
            f =>
                f.Severity == severity
                && f.Where == "keel, second layer"
                && f.Message.Contains(says, StringComparison.Ordinal)
        );

        // The step at each end: 1 / tan 20 = 2.7 mm of half-width.
        Finding[] ends =
        [
            .. told.Where(f => f.Message.Contains("is 2.5 mm the wider", StringComparison.Ordinal)),
        ];
        Assert.Equal(2, ends.Length);
        Assert.Contains("300 mm aft of station 2:", ends[0].Message, StringComparison.Ordinal);
        Assert.Contains("600 mm aft of station 4:", ends[1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void WithoutALapNothingIsSaidOfOne() => Assert.Empty(OfKeel(Job(lap: null)));

    /// <summary>The mitre of the first layer is 40 + 9 tan 10 = 41.6 mm a side, 83.2 mm in all, by hand.</summary>
    [Theory]
    [InlineData(83, true)]
    [InlineData(83.5, false)]
    public void StockThatIsTooNarrowIsToldOnceALayer(double stock, bool told)
    {
        Job job = Job(lap: null);
        job = job with
        {
            Keel = job.Keel with { StockWidthMm = stock, Layers = [job.Keel.Layers[0]] },
        };
        Finding[] found =
        [
            .. OfKeel(job).Where(f => f.Message.Contains("83.5 mm wide", StringComparison.Ordinal)),
        ];
        Assert.Equal(told ? 1 : 0, found.Length);
    }

    /// <summary>A side that leans inward makes the inner face the wider: 9 tan 30 = 5.2 mm a side more.</summary>
    [Fact]
    public void StockIsAskedForTheWiderFace()
    {
        Job job = Job(lap: null);
        KeelLayerSpec leaning = job.Keel.Layers[0] with { Side = new KeelLayerSide.Leaning(-30) };
        job = job with { Keel = job.Keel with { StockWidthMm = 93, Layers = [leaning] } };
        Assert.Contains(
            OfKeel(job),
            f => f.Message.StartsWith("it wants timber 94 mm wide", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void PastTheLastMeasuredStationAGuessIsToldAsOne()
    {
        Job job = Job(lap: null);
        double half = WholeBottomTests.Planned(job).Keel!.Layers[0].Stations[0].WantedHalfWidthMm;
        BottomPlan plan = WholeBottomTests.Planned(
            job with
            {
                AsBuilt = AsBuiltSpec.None with
                {
                    KeelHalfWidths =
                    [
                        new("first layer", "3", Side.Starboard, half),
                        new("first layer", "4", Side.Starboard, half + 2),
                    ],
                },
            }
        );
        string[] told =
        [
            .. plan.Keel!.Findings.Where(f => f.Severity == Severity.Warning).Select(f => f.Where),
        ];
        Assert.Equal(
            ["keel, first layer, station 4, starboard", "keel, first layer, starboard"],
            told
        );
        Assert.Contains(
            plan.Keel.Findings,
            f =>
                f.Message.StartsWith(
                    "nothing is measured aft of station 4",
                    StringComparison.Ordinal
                )
        );

        // Past the last station the keel is taken to be out by as much; forward of the first it is where it was drawn.
        Assert.All(
            plan.Keel.Layers[0].On(Side.Starboard),
            r => Assert.Equal(r.PositionMm < 2700 ? 0 : 2, r.TakeOffSideMm, 1e-9)
        );
        Assert.All(plan.Keel.Layers[0].On(Side.Port), r => Assert.Equal(0, r.TakeOffSideMm));
    }

    /// <summary>
    /// The launch, with the zones of her job: forward of where it runs out planks are left long at the keel and fit at the chine, aft of it the other way about, and a
    /// zone of the job goes before both.
    /// </summary>
    [Fact]
    public void EveryPlankOfTheLaunchCarriesTheRightPairOfEnds()
    {
        BottomPlan plan = DemoPlans.Of("survey-launch");
        int changed = 0;
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            KeelLayerPlan keel = plan.Keel!.Layers.Single(k => k.Spec.Meets == layer.Planks.Name);
            double runsOut = keel.RunsOutAtMm!.Value;

            // By hand from keel.json's rows: it runs out where the deadrise passes 40 degrees.
            KeelStation[] run = [.. keel.Between.Where(r => r.Side == Side.Starboard)];
            Assert.True(run.Last(r => r.PositionMm < runsOut).Angles.DeadriseDegrees >= 40);
            Assert.True(run.First(r => r.PositionMm > runsOut).Angles.DeadriseDegrees <= 40);
            foreach (Plank plank in layer.Starboard.Concat(layer.Port))
            {
                bool ranOut = false;
                foreach (PlankEnd end in plank.Ends.Where(e => e.At == PanelEdge.Lower))
                {
                    double x = MiddleX(end);
                    if (Math.Abs(x - runsOut) > 5 && Math.Abs(x - 600) > 5)
                    {
                        Assert.Equal(x < runsOut ? EndCut.LeftLong : EndCut.Fit, end.Cut);
                    }

                    ranOut |= x < runsOut;
                    changed += x > 600 && x < runsOut ? 1 : 0;
                }

                foreach (PlankEnd end in plank.Ends.Where(e => e.At == PanelEdge.Upper))
                {
                    double x = MiddleX(end);
                    if (Math.Abs(x - 1500) > 5 && (ranOut || plank.Ends[0].At == PanelEdge.Lower))
                    {
                        Assert.Equal(ranOut || x < 1500 ? EndCut.Fit : EndCut.LeftLong, end.Cut);
                    }
                }
            }
        }

        Assert.True(changed >= 4, $"{changed} ends are left long where it runs out and by no zone");
    }

    private static double MiddleX(PlankEnd end) =>
        end.Outline.Length % 2 == 1
            ? end.Outline[end.Outline.Length / 2].X
            : 0.5
                * (
                    end.Outline[(end.Outline.Length / 2) - 1].X
                    + end.Outline[end.Outline.Length / 2].X
                );

    private static Finding[] OfKeel(Job job) => [.. WholeBottomTests.Planned(job).Keel!.Findings];

    private static Job Job(ClothLap? lap)
    {
        Job job = PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Outside);
        return job with
        {
            Layers = [.. job.Layers.Select(l => l is ClothLayerSpec c ? c with { Lap = lap } : l)],
            Keel = KeelSpec.None with
            {
                Layers =
                [
                    PlaneBottom.KeelLayer("first layer", "inner", 9),
                    PlaneBottom.KeelLayer("second layer", "outer", 9),
                ],
            },
        };
    }
}
