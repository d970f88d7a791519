using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.Keel;

/// <summary>Where the keel runs out the pair of ends changes, plank by plank; a zone of the job goes before it.</summary>
public sealed class KeelRunOutTests
{
    private const double RunOutMm = 1500;

    [Fact]
    public void EachPlankAcrossTheRunOutCarriesTheRightPairOfEnds()
    {
        BottomPlan plan = WholeBottomTests.Planned(Job());
        Assert.Empty(BottomLaws.Broken(plan));
        int before = 0,
            after = 0;
        foreach (Plank plank in plan.PlankLayers.SelectMany(l => l.Starboard))
        {
            PlankEnd[] keel = [.. plank.Ends.Where(e => e.At == PanelEdge.Lower)];
            if (keel.Length != 1 || plank.Layer != 1)
            {
                continue;
            }

            // The plane bottom's keel line is straight: the end's middle is midway between its corners.
            double x = 0.5 * (keel[0].Outline[0].X + keel[0].Outline[^1].X);
            bool ranOut = x < RunOutMm;
            Assert.Equal(ranOut ? EndCut.LeftLong : EndCut.Fit, keel[0].Cut);
            Assert.All(
                plank.Ends.Where(e => e.At == PanelEdge.Upper),
                e => Assert.Equal(ranOut ? EndCut.Fit : EndCut.LeftLong, e.Cut)
            );
            (before, after) = ranOut ? (before + 1, after) : (before, after + 1);
        }

        Assert.True(before > 4 && after > 20, $"{before} before, {after} after");
        Assert.Contains(
            plan.Findings,
            f =>
                f.Where == "keel, first layer"
                && f.Message.StartsWith("it begins 600 mm aft of station 1:")
        );
    }

    [Fact]
    public void AZoneOfTheJobGoesBeforeTheRunOut()
    {
        Job job = Job();
        BottomPlan plan = WholeBottomTests.Planned(
            job with
            {
                Ends = job.Ends with
                {
                    Zones = [new(0, 1000, EndRule.Fit, EndRule.LeftLong(40), null, null)],
                },
            }
        );
        PlankEnd[] forward =
        [
            .. plan
                .PlankLayers.First()
                .Starboard.SelectMany(p => p.Ends)
                .Where(e => e.At == PanelEdge.Lower && e.Outline.All(p => p.X < 950)),
        ];
        Assert.NotEmpty(forward);
        Assert.All(forward, e => Assert.Equal(EndCut.Fit, e.Cut));
    }

    /// <summary>A keel whose mitre narrows forward runs out where it is as wide as the least: on a bottom whose deadrise grows, held to the figures between.</summary>
    [Fact]
    public void ItRunsOutWhereTheMitreGetsNarrowerThanTheLeast()
    {
        Job job = PlankFit.Tests.Geometry.LoftTests.Demo("survey-launch");
        job = job with
        {
            Keel = KeelSpec.None with
            {
                Layers = [PlaneBottom.KeelLayer("first layer", "inner", 9)],
                LeastHalfWidthMm = 36,
            },
        };
        KeelLayerPlan layer = WholeBottomTests.Planned(job).Keel!.Layers[0];
        double x = layer.RunsOutAtMm!.Value;
        KeelStation[] run = [.. layer.Between.Where(r => r.Side == Side.Starboard)];
        KeelStation last = run.Last(r => r.PositionMm <= x),
            next = run.First(r => r.PositionMm > x);
        Assert.True(last.WantedHalfWidthMm <= 36 && next.WantedHalfWidthMm > 36);
    }

    private static Job Job() =>
        PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Outside) with
        {
            Keel = KeelSpec.None with
            {
                Layers =
                [
                    PlaneBottom.KeelLayer("first layer", "inner", 9) with
                    {
                        FromMm = RunOutMm,
                    },
                    PlaneBottom.KeelLayer("second layer", "outer", 9),
                ],
            },
        };
}
