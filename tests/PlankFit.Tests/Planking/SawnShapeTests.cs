using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Geometry;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking;

/// <summary>The last look at what is sawn: it passes every plank of the demos, catches one that was spoiled, and tells of a tip for which there is no wood.</summary>
public sealed class SawnShapeTests
{
    [Theory]
    [InlineData("survey-launch")]
    [InlineData("pilot-skiff")]
    [InlineData("tender")]
    public void EveryDemoPlankHolds(string hull) =>
        Assert.All(
            WholeBottomTests
                .Planned(LoftTests.Demo(hull))
                .PlankLayers.SelectMany(l =>
                    l.Starboard.Concat(l.Port).Select(p => (Plank: p, l.Planks.WidthMm))
                ),
            p => Assert.True(SawnShape.Holds(p.Plank, p.WidthMm), p.Plank.Id.ToString())
        );

    [Fact]
    public void ASpoiledOutlineIsCaught()
    {
        PlankLayerPlan layer = WholeBottomTests
            .Planned(LoftTests.Demo("tender"))
            .PlankLayers.First();
        Plank plank = layer.Starboard[10];
        double width = layer.Planks.WidthMm;
        ImmutableArray<Vec2> crossed = plank
            .FlatCut.SetItem(0, plank.FlatCut[plank.FlatCut.Length / 2])
            .SetItem(plank.FlatCut.Length / 2, plank.FlatCut[0]);
        Assert.False(SawnShape.Holds(plank.Shaped(s => s with { FlatCut = crossed }), width));

        // Shifted by a tenth of a millimetre past the face that it is cut to.
        ImmutableArray<Vec2> shifted = [.. plank.FlatCut.Select(v => new Vec2(v.X + 0.1, v.Y))];
        Assert.False(SawnShape.Holds(plank.Shaped(s => s with { FlatCut = shifted }), width));
    }

    [Fact]
    public void ATipPastTheStockIsTold()
    {
        BottomPlan plan = WholeBottomTests.Planned(LoftTests.Demo("tender"));
        string[] told =
        [
            .. plan
                .Findings.Where(f =>
                    f.Message.Contains("past the edge of the stock", StringComparison.Ordinal)
                )
                .Select(f => f.Where),
        ];
        string[] should =
        [
            .. plan
                .PlankLayers.SelectMany(l =>
                    l.Starboard.Where(p =>
                        p.Ends.Any(e =>
                            e.OuterLine.Concat(e.InnerLine)
                                .Any(v => Math.Abs(v.Y) > (l.Planks.WidthMm / 2) + 0.25)
                        )
                    )
                )
                .Select(p => p.Id.ToString()),
        ];
        Assert.NotEmpty(should);
        Assert.Equal(should, told);
    }
}
