using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking.Keel;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.AsBuilt;

/// <summary>What is measured or sawn on one side does to that side, and to the planks beside it, what it must and no more.</summary>
public sealed class SawnNeighbourTests
{
    private static readonly Lazy<BottomPlan> Drawn = new(() => WholeBottomTests.Planned(Job()));

    /// <summary>The keel turns out 3 mm wide: beside a sawn plank, ahead of it and behind, the ticks of its two seams would not meet its own, and are left out.</summary>
    [Fact]
    public void TicksThatWouldNotMeetAreLeftOutOnBothSidesOfASawnPlank()
    {
        double half = Drawn.Value.Keel!.Layers[0].Stations[0].WantedHalfWidthMm;
        BottomPlan plan = WholeBottomTests.Planned(
            Job() with
            {
                AsBuilt = AsBuiltSpec.None with
                {
                    Sawn = [RecordsOfSawn.Of(Drawn.Value, "S1-20")],
                    KeelHalfWidths = [new("first layer", "3", Side.Starboard, half + 3)],
                },
            }
        );
        foreach ((string id, string seam) in new[] { ("S1-19", "19"), ("S1-21", "20") })
        {
            Assert.NotEmpty(Ticks(Drawn.Value, id, seam));
            Assert.Empty(Ticks(plan, id, seam));
        }

        Assert.NotEmpty(Ticks(plan, "S1-19", "18"));
        Assert.NotEmpty(Ticks(plan, "S1-21", "21"));
    }

    /// <summary>Seams measured to starboard alone move no plank to port.</summary>
    [Fact]
    public void ASeamMeasuredToStarboardLeavesPortAsDrawn()
    {
        Plank fitted = Drawn.Value.Find("S1-26")!;
        BottomPlan plan = WholeBottomTests.Planned(
            Job() with
            {
                AsBuilt = AsBuiltSpec.None with
                {
                    Seams =
                    [
                        new(fitted.Id, PanelEdge.Lower, fitted.AfterEdge.Seam[0].X + 9),
                        new(fitted.Id, PanelEdge.Upper, fitted.AfterEdge.Seam[^1].X + 9),
                    ],
                },
            }
        );
        Plank now = plan.Find("S1-27")!,
            was = Drawn.Value.Find("S1-27")!;
        Assert.True(now.ForwardEdge.Seam[^1].X - was.ForwardEdge.Seam[^1].X > 5);
        foreach (
            (Plank a, Plank b) in Drawn
                .Value.PlankLayers.First()
                .Port.Zip(plan.PlankLayers.First().Port)
        )
        {
            Assert.Equal(a.Id, b.Id);
            Assert.True(
                a.FlatNet.Zip(b.FlatNet).All(p => p.First.ChordTo(p.Second) < 1e-6),
                a.Id.ToString()
            );
            Assert.True(
                a.Outline.Zip(b.Outline).All(p => p.First.ChordTo(p.Second) < 1e-6),
                a.Id.ToString()
            );
        }
    }

    private static string[] Ticks(BottomPlan plan, string id, string seam) =>
        [
            .. plan.Find(id)!
                .Marks.Where(m => m.Kind == "witness")
                .Select(m => m.Label)
                .Where(l => l.TrimEnd([.. "abcdefghijklmnopqrstuvwxyz"]) == seam),
        ];

    private static Job Job()
    {
        Job job = PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Outside);
        return job with
        {
            Layers = [job.Layers[0]],
            Keel = KeelSpec.None with
            {
                Layers = [PlaneBottom.KeelLayer("first layer", "inner", 9)],
            },
        };
    }
}
