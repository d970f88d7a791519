using PlankFit.Export.Story;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking;
using PlankFit.Tests.Planking.Keel;

namespace PlankFit.Tests.Export;

/// <summary>A plank's story names the side that its end meets, as the keel's own list has it.</summary>
public sealed class StorySidesTests
{
    public static TheoryData<KeelLayerSide, string> Sides =>
        new()
        {
            { new KeelLayerSide.Plumb(), "the side of first layer is plumb" },
            { new KeelLayerSide.Leaning(-7.5), "the side of first layer leans 7.5° off plumb" },
            {
                new KeelLayerSide.SquareToPlank(),
                "the side of first layer goes through its outer edge square to the planks"
            },
        };

    [Theory]
    [MemberData(nameof(Sides))]
    public void TheBevelOfTheStoryIsTheKeelsOwn(KeelLayerSide side, string words)
    {
        BottomPlan plan = WholeBottomTests.Planned(
            PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Outside) with
            {
                Keel = KeelSpec.None with
                {
                    Layers =
                    [
                        PlaneBottom.KeelLayer("first layer", "inner", 9) with
                        {
                            HalfWidth = new KeelHalfWidth.Tapered(44, 44),
                            Side = side,
                        },
                    ],
                },
            }
        );
        PlankLayerPlan layer = plan.PlankLayers.First();
        Plank master = layer.Starboard[layer.MasterNumber - 1];
        KeelPlankEnd told = plan.Keel!.Layers[0].PlankEnds.Single(e => e.PlankId == master.Id);
        string line = PlankStory
            .Of(plan, layer, master)
            .SelectMany(s => s.Lines)
            .Single(l => l.Contains(words, StringComparison.Ordinal));
        Assert.Contains(
            $"the bevel is {NumberText.Padded(told.BevelDegrees, 2)}°",
            line,
            StringComparison.Ordinal
        );
        Assert.Equal(
            plan.Keel.Layers[0].Stations[0].Angles.PlankEndBevelDegrees,
            told.BevelDegrees,
            1e-6
        );
    }
}
