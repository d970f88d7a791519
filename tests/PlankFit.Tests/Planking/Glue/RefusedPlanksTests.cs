using PlankFit.Export.Glue;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Export.Glue;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>No glue is mixed for a skin of which some planks are not to be sawn, and that is told where the sessions are.</summary>
public sealed class RefusedPlanksTests
{
    private const string Said = "refused: not to be sawn";

    /// <summary>The outer skin twice as thick, and its five hardest bends refused.</summary>
    private static Job Thick(int seed)
    {
        Job job = GluedLaunch.Job(seed);
        double radius = GluedLaunch
            .Plan.PlankLayers.Last()
            .Starboard.Select(p => p.Bend.LeastRadiusMm ?? double.PositiveInfinity)
            .Order()
            .ElementAt(5);
        return job with
        {
            Timber = null,
            Limits = job.Limits with
            {
                Bend =
                [
                    new(radius / 18, "cold", "this test"),
                    new(0, "refuse", "this test") { Way = BendWay.Refuse },
                ],
            },
            Layers =
            [
                .. job.Layers.Select(l =>
                    l is PlankLayerSpec { Name: "outer" } skin ? skin with { ThicknessMm = 18 } : l
                ),
            ],
        };
    }

    [Fact]
    public void NoBatchIsMixedForASkinThatCannotBeWhole()
    {
        BottomPlan plan = GluedLaunch.Of(Thick(3));
        PlankLayerPlan outer = plan.PlankLayers.Last();
        PlankId[] refused =
        [
            .. outer.Starboard.Concat(outer.Port).Where(p => p.IsRefused).Select(p => p.Id),
        ];
        Assert.InRange(refused.Length, 1, outer.Starboard.Length + outer.Port.Length - 1);
        Assert.DoesNotContain(plan.PlankLayers.First().Starboard, p => p.IsRefused);
        GluePlan glue = plan.Glue!;
        Assert.DoesNotContain(
            glue.Batches.SelectMany(b => b.Planks),
            p => p.Id.Layer == outer.Starboard[0].Layer
        );
        Assert.Contains(glue.Batches, b => !b.Planks.IsEmpty);
        Assert.Equal("outer", glue.NotPlanned[0]);
        Finding told = Assert.Single(
            glue.Findings,
            f => f.Message.Contains(Said, StringComparison.Ordinal)
        );
        Assert.StartsWith(
            $"it is not planned, since {PlankRuns.Of(refused)} ",
            told.Message,
            StringComparison.Ordinal
        );
        Assert.Equal(told, glue.StoppedBy);
        // On the sheets it is the planks that stand in the way, and what to do; not the clock.
        string sheets = string.Join(' ', GlueSheetsTests.Words(GlueSheets.Of(plan, glue)));
        Assert.Contains(
            $"NOT ALL IS PLANNED: {string.Join("; ", glue.NotPlanned)} ",
            sheets,
            StringComparison.Ordinal
        );
        Assert.Contains(
            $"Why, layer outer: {told.Message}. Mix nothing",
            sheets,
            StringComparison.Ordinal
        );
        Assert.Contains("Lay the layer at another angle", told.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("no time was found", sheets, StringComparison.Ordinal);

        // Once they are down, made up of laminations, the rest is planned.
        Job job = Thick(3);
        GluePlan after = GluedLaunch
            .Of(
                job with
                {
                    Glue = job.Glue! with
                    {
                        Done = new([.. refused.Select(p => new GlueDone(p, null, p.Side, 900))]),
                    },
                }
            )
            .Glue!;
        Assert.DoesNotContain(
            after.Findings,
            f => f.Message.Contains(Said, StringComparison.Ordinal)
        );
    }
}
