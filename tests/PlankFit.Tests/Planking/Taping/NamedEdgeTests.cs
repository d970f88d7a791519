using System.Collections.Immutable;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Taping;

/// <summary>Which plank a reading's name is of, where the frames as taped are laid with other planks than the table.</summary>
public sealed class NamedEdgeTests
{
    /// <summary>
    /// Laid at twelve degrees more S1-05 is another plank than it was: an edge of that name is looked for where it lies now, and what a tape reads there is that
    /// of the table between its marks.
    /// </summary>
    [Fact]
    public void AnEdgeIsLookedForWhereItsNameIsNow()
    {
        PlankingJob job = At(0);
        Planked drawn = Lay(job),
            others = Lay(At(+12));
        PlankLayerPlan layer = drawn.PlankLayers.First();
        double width = layer.Planks.WidthMm;
        var edge = new TapedEdge(layer.Starboard[4].Id, true);
        TapedSeamPlace Of(Planked? asTaped) => EdgePlaces.Of(job, drawn, asTaped, [edge])[edge];
        TapedSeamPlace was = Of(null),
            same = Of(drawn),
            now = Of(others);
        Assert.Equal(was, same);
        Assert.False(was.IsAsTaped);
        double aft = now.Marks.AlongKeelMm - was.Marks.AlongKeelMm;
        Assert.True(Math.Abs(aft) > width / 2, $"{aft} of {width}");
        Assert.True(now.IsAsTaped);
        // As if it had been drawn so from the first.
        TapedSeamPlace first = EdgePlaces.Of(At(+12), others, null, [edge])[edge];
        Assert.Equal(first.Marks, now.Marks);
        Assert.Equal(first.DrawnMm, now.DrawnMm, 0.001);
        Assert.True(Math.Abs(first.DrawnMm - was.DrawnMm) > 5);
    }

    /// <summary>The frames as taped are wider by 10 mm and have other planks: of their seam's length what the frames make of it is taken off again.</summary>
    [Fact]
    public void WhatATapeReadsThereIsToldOfTheTable()
    {
        PlankingJob job = At(0),
            turned = At(+12);
        OffsetTable wider = job.Offsets with
        {
            Lines =
            [
                .. job.Offsets.Lines.Select(l =>
                    l.Name == job.Hull.Panel.Upper
                        ? l with
                        {
                            HalfBreadthsMm = [.. l.HalfBreadthsMm.Select(b => b + 10)],
                        }
                        : l
                ),
            ],
        };
        Planked drawn = Lay(job),
            as0 = Lay(turned),
            as10 = Lay(turned with { Offsets = wider });
        var edge = new TapedEdge(drawn.PlankLayers.First().Starboard[4].Id, true);
        TapedSeamPlace Of(Planked asTaped) => EdgePlaces.Of(job, drawn, asTaped, [edge])[edge];
        TapedSeamPlace same = Of(as0),
            more = Of(as10);
        Assert.True(same.IsAsTaped && more.IsAsTaped);
        double longer =
            as10.Find(edge.Plank)!.AfterEdge.SeamLengthMm
            - as0.Find(edge.Plank)!.AfterEdge.SeamLengthMm;
        Assert.True(longer > 5, $"{longer}");
        Assert.Equal(same.DrawnMm, more.DrawnMm, 0.6 * longer);
    }

    /// <summary>Where the master was moved off a sliver as drawn it stands there as taped: nothing is told of other planks.</summary>
    [Fact]
    public void AHullOutAsMuchAsIsTrustedHasThePlanksOfTheTable()
    {
        // Where more is asked for than by default, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        var hulls = new TapedHulls(TapedHulls.Launch, TrustSpec.Default, 1);
        BottomPlan plan = Plan(
            hulls.Read([TapedHulls.Girth("4"), TapedHulls.Girth("8")], hulls.Draw(), 2)
        );
        Assert.NotNull(plan.Taped!.Tables);
        Assert.Contains(plan.PlankLayers, l => l.MasterShiftMm != 0);
        Assert.DoesNotContain(
            plan.Findings,
            f => f.Message.Contains("with other planks", StringComparison.Ordinal)
        );
    }

    private static PlankingJob At(double degreesMore) =>
        TapedHulls.Launch.Planking with
        {
            Layers =
            [
                .. TapedHulls.Launch.Layers.Select(l =>
                    l is PlankLayerSpec { Law: DiagonalLaw law } p
                        ? p with
                        {
                            Law = law with { AngleDegrees = law.AngleDegrees + degreesMore },
                        }
                        : l
                ),
            ],
        };

    private static Planked Lay(PlankingJob job) =>
        BottomPlanner.Plan(new(job), null, TestContext.Current.CancellationToken).Plan!.Planked;

    private static BottomPlan Plan(ImmutableArray<TapeReading> read) =>
        BottomPlanner
            .Plan(
                TapedHulls.Launch with
                {
                    Trust = TrustSpec.Default,
                    Joints = null,
                    Fastenings = null,
                    SettingUp = null,
                    Framing = [],
                    AsBuilt = AsBuiltSpec.None with { Readings = read },
                },
                null,
                TestContext.Current.CancellationToken
            )
            .Plan!;
}
