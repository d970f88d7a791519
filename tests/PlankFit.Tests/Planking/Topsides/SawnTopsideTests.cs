using System.Collections.Immutable;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Reading.AsBuilt;
using PlankFit.Tests.Geometry;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Topsides;

/// <summary>Planks of a topside on the record of what is sawn: they keep their shapes, and the record keeps them.</summary>
public sealed class SawnTopsideTests
{
    private static SawnPlank[] Sawn(BottomPlan plan, params string[] names) =>
        [
            .. names.Select(n =>
            {
                Plank plank = plan.Find(n)!;
                return SawnPlank.Of(plank, plan.LayerOf(plank.Id).Planks, "abcdef");
            }),
        ];

    [Fact]
    public void TheRecordHasEdgesByPanelAndGivesThemBack()
    {
        BottomPlan plan = WholeBottomTests.Planned(LoftTests.Demo("day-launch"));
        SawnPlank[] sawn = Sawn(plan, "S1-08", "ST1-08", "PT2-03");
        string text = SawnPlanksFile.Write(sawn);
        SawnReading read = SawnPlanksFile.Read(text, "sawn-planks.json");
        Assert.Null(read.Fault);
        Assert.Equal(sawn.Select(s => s.Id).Order(), read.Planks.Select(p => p.Id).Order());
        Assert.Contains("\"at\":\"lower\"", text, StringComparison.Ordinal);
        Assert.Contains("\"at\":\"keel\"", text, StringComparison.Ordinal);

        // Written again by one who has read it, it is the same.
        Assert.Equal(text, SawnPlanksFile.Write(read.Planks));
    }

    [Fact]
    public void ASawnPlankStaysAsItWasWhenTheLayerChanges()
    {
        // Where long runs are asked for or faults are planted, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        Job job = LoftTests.Demo("day-launch");
        BottomPlan before = WholeBottomTests.Planned(job);
        ImmutableArray<SawnPlank> read = SawnPlanksFile
            .Read(
                SawnPlanksFile.Write(Sawn(before, "S1-08", "ST1-08", "ST1-09")),
                "sawn-planks.json"
            )
            .Planks;
        PlankingJob side = job.Panels[0];
        BottomPlan after = WholeBottomTests.Planned(
            job with
            {
                AsBuilt = job.AsBuilt with { Sawn = read },
                Panels =
                [
                    side with
                    {
                        Layers =
                        [
                            .. side.Layers.Select(l => ((PlankLayerSpec)l) with { WidthMm = 112 }),
                        ],
                    },
                ],
            }
        );
        foreach (string name in new[] { "S1-08", "ST1-08", "ST1-09" })
        {
            Plank was = before.Find(name)!,
                now = after.Find(name)!;
            Assert.True(now.IsSawn);
            Assert.Equal(was.FlatCut, now.FlatCut);
            Assert.Equal(was.Ends.Select(e => e.Word), now.Ends.Select(e => e.Word));
        }

        Assert.False(after.Find("PT1-08")!.IsSawn);
        Assert.Equal(3, after.OnRecord.Length);
    }

    /// <summary>Where the panel is taken out of the job its sawn planks stay on the record, and are no planks of the bottom.</summary>
    [Fact]
    public void PlanksOfAPanelThatIsGoneStayOnTheRecord()
    {
        Job job = LoftTests.Demo("day-launch");
        BottomPlan before = WholeBottomTests.Planned(job);
        BottomPlan after = WholeBottomTests.Planned(
            job with
            {
                Panels = [],
                AsBuilt = job.AsBuilt with { Sawn = [.. Sawn(before, "S1-08", "ST1-20")] },
            }
        );
        Assert.True(after.Find("S1-08")!.IsSawn);
        Assert.False(after.Find("S1-20")!.IsSawn);
        Assert.Null(after.Find("ST1-20"));
        Assert.Equal(["S1-08", "ST1-20"], after.OnRecord.Select(c => c.Id.ToString()).Order());
    }
}
