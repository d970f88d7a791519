using CsCheck;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking.Keel;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.AsBuilt;

/// <summary>How a sawn plank fits: its figures by their meaning, each bound on its own, and on plane bottoms and a curved one against what was moved.</summary>
public sealed class SawnFitTests
{
    private static readonly Gen<double?> Figure = Gen.Select(
        Gen.Bool,
        Gen.Double[-9, 9],
        (none, mm) => none ? (double?)null : mm
    );

    /// <summary>Short and open by the greatest figure, long and tight by the least, none of them below nought; an edge that is not there says nothing.</summary>
    [Fact]
    public void EachFigureIsTheWorstOfItsTwo() =>
        Gen.Select(Figure, Figure, Figure, Figure)
            .Sample(
                (forward, after, keel, chine) =>
                {
                    SawnFit fit = new("", forward, after, keel, chine, 0);
                    double[] along = [0, .. new[] { forward, after }.OfType<double>()],
                        across = [0, .. new[] { keel, chine }.OfType<double>()];
                    Assert.Equal((along.Max(), -along.Min()), (fit.ShortMm, fit.LongMm));
                    Assert.Equal((across.Max(), -across.Min()), (fit.OpenMm, fit.TightMm));
                },
                iter: 100
            );

    [Theory]
    [InlineData(0, 0, 0, 0, 0, 0, true)]
    [InlineData(0.8, 0, 0, 0, 0, 0, true)]
    [InlineData(0.81, 0, 0, 0, 0, 0, false)]
    [InlineData(0, 0.81, 0, 0, 0, 0, false)]
    [InlineData(5.7, 5.8, 0, 0, 5, 0, true)]
    [InlineData(5.7, 5.81, 0, 0, 5, 0, false)]
    [InlineData(-40, -40, 0, 0, 0, 0, true)]
    [InlineData(0, 0, 0.5, -0.5, 0, 0, true)]
    [InlineData(0, 0, 0.51, 0, 0, 0, false)]
    [InlineData(0, 0, 0, 0.51, 0, 0, false)]
    [InlineData(0, 0, -0.51, 0, 0, 0, false)]
    [InlineData(0, 0, 0, -0.51, 9, 0, false)]
    [InlineData(0, 0, 0, 0, 0, 0.09, true)]
    [InlineData(0, 0, 0, 0, 0, -0.09, true)]
    [InlineData(0, 0, 0, 0, 0, 0.11, false)]
    [InlineData(0, 0, 0, 0, 9, -0.11, false)]
    public void EachBoundIsAskedOnItsOwn(
        double forward,
        double after,
        double keel,
        double chine,
        double spare,
        double thinner,
        bool fits
    ) =>
        Assert.Equal(
            fits,
            SawnFindings.Fits(
                new("", forward, after, keel, chine, spare) { ThinnerMm = thinner },
                0.5
            )
        );

    /// <summary>
    /// The girths of a plane bottom turn out 6 mm longer all along: every chine lies 6 mm further out square to itself, and edges at 45 degrees are 6 / sin 45
    /// too short. Both diagonals, both sides, every plank that fits at the chine.
    /// </summary>
    [Theory]
    [InlineData(6, "short")]
    [InlineData(-6, "long")]
    public void AChineFurtherOutIsToldAtEveryEndThatWasFittedThere(double moved, string sense)
    {
        Job job = FitAtBothEnds(PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Inside));
        BottomPlan drawn = WholeBottomTests.Planned(job);
        double girth =
            (PlaneBottom.ChineHalf - PlaneBottom.KeelHalf) / Math.Cos(20 * Math.PI / 180);
        PlankId[] ids =
        [
            .. drawn
                .PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port))
                .Where((p, i) => i % 3 == 0 && p.Kind is PlankKind.Full)
                .Where(p => p.Ends.Length == 2 && p.Ends.Any(e => e.At == PanelEdge.Upper))
                .Where(p => p.Ends.Any(e => e.At == PanelEdge.Lower))
                .Select(p => p.Id),
        ];
        BottomPlan plan = WholeBottomTests.Planned(
            job with
            {
                AsBuilt = AsBuiltSpec.None with
                {
                    Sawn = [.. ids.Select(id => RecordsOfSawn.Of(drawn, id))],
                    Girths =
                    [
                        new("3", Side.Starboard, girth + moved),
                        new("3", Side.Port, girth + moved),
                    ],
                },
            }
        );
        Assert.True(ids.Length > 30, $"{ids.Length} planks");
        foreach (PlankId id in ids)
        {
            Finding told = Assert.Single(plan.Findings, f => f.About.Plank == id);
            Assert.Contains($"its end at the chine no longer fits", told.Message);
            Assert.Contains($"about 6 mm {sense}", told.Message, StringComparison.Ordinal);
            SawnFit fit = plan.AsBuilt!.Sawn.Single(r => r.Id == id).Fit;
            double along = moved / Math.Sin(Math.PI / 4);
            Assert.Equal(along, fit.ForwardMm!.Value, 0.01);
            Assert.Equal(along, fit.AfterMm!.Value, 0.01);
            Assert.Equal(0, fit.AtKeelMm!.Value, 0.01);
            Assert.Equal(0, fit.AtChineMm!.Value, 0.01);
        }
    }

    /// <summary>Every plank of a curved bottom is sawn and nothing has moved: nothing is said, and no figure differs; across there is one where both edges are.</summary>
    [Fact]
    public void WhatHasNotMovedFits()
    {
        Job job = FitAtBothEnds(DemoPlans.Of("tender").Job);
        job = job with { Layers = [job.Layers[0]] };
        BottomPlan drawn = WholeBottomTests.Planned(job);
        Plank[] all = [.. drawn.PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port))];
        BottomPlan plan = WholeBottomTests.Planned(
            job with
            {
                AsBuilt = AsBuiltSpec.None with
                {
                    Sawn = [.. all.Select(p => RecordsOfSawn.Of(drawn, p.Id))],
                },
            }
        );
        Assert.DoesNotContain(
            plan.Findings,
            f => f.Message.StartsWith("it is sawn", StringComparison.Ordinal)
        );
        Assert.Equal(all.Length, plan.AsBuilt!.Sawn.Length);
        foreach (Plank plank in all)
        {
            SawnFit fit = plan.AsBuilt!.Sawn.Single(r => r.Id == plank.Id).Fit;
            Assert.Equal(plank.ForwardEdge.Exists, fit.ForwardMm is not null);
            Assert.Equal(plank.AfterEdge.Exists, fit.AfterMm is not null);
            if (!(plank.ForwardEdge.Exists && plank.AfterEdge.Exists))
            {
                Assert.True(fit is { AtKeelMm: null, AtChineMm: null }, plank.Id.ToString());
            }

            Assert.Equal(0, fit.ShortMm + fit.LongMm + fit.OpenMm + fit.TightMm, 0.01);
        }

        Assert.Contains(all, p => !p.ForwardEdge.Exists || !p.AfterEdge.Exists);
    }

    private static Job FitAtBothEnds(Job job) =>
        job with
        {
            Ends = job.Ends with { Lower = EndRule.Fit, Upper = EndRule.Fit },
        };
}
