using PlankFit.Export.Cards;
using PlankFit.Export.Words;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Words;

public sealed class PlankWordsTests
{
    private static readonly Plank Plank = PrismaticPlan.Build().Find("S1-17")!;

    [Theory]
    [InlineData(0, 0, "straight")]
    [InlineData(0.2, 0.1, "straight")]
    [InlineData(1.6, 0, "round 1.5 mm")]
    [InlineData(0, 0.8, "hollow 1 mm")]
    [InlineData(1, 0.5, "round 1 mm and hollow 0.5 mm")]
    public void AnEdgeInAWord(double round, double hollow, string word) =>
        Assert.Equal(
            word,
            PlankWords.Edge(
                Plank.ForwardEdge with
                {
                    RoundMm = round,
                    HollowMm = hollow,
                },
                LengthUnit.Millimetre
            )
        );

    [Fact]
    public void AMissingEdgeSaysSo() =>
        Assert.Equal("none", PlankWords.Edge(PlankEdge.None, LengthUnit.Inch));

    [Fact]
    public void StraightStockServesOrDoesNot()
    {
        Assert.Equal(
            "Both edges straight; straight stock serves.",
            PlankWords.Edges(Plank, LengthUnit.Millimetre)
        );
        Plank hollow = Plank
            .WithStraight(s => s with { Serve = false, WidestGapMm = 1.3 })
            .Shaped(s => s with { After = s.After with { HollowMm = 1.2 } });
        // A gap is rounded up: what is called 1.5 mm is at most 1.5 mm.
        Assert.Equal(
            "Forward edge straight, after edge hollow 1 mm; cut to the line: straight stock would open by up to 1.5 mm.",
            PlankWords.Edges(hollow, LengthUnit.Millimetre)
        );
    }

    /// <summary>What is nothing on paper is not said, and edges that stand out by less than paper shows have no row of noughts.</summary>
    [Theory]
    [InlineData(1.3, 0.0005, "open by up to 1.5 mm.")]
    [InlineData(0.0005, 1.3, "overlap by up to 1.5 mm.")]
    [InlineData(1.3, 0.6, "open by up to 1.5 mm and overlap by up to 1 mm.")]
    public void NoEdgeOpensByNought(double gapMm, double overlapMm, string told)
    {
        Plank plank = Plank.WithStraight(s =>
            s with
            {
                Serve = false,
                WidestGapMm = gapMm,
                WidestOverlapMm = overlapMm,
            }
        );
        Assert.EndsWith(
            "straight stock would " + told,
            PlankWords.Edges(plank, LengthUnit.Millimetre),
            StringComparison.Ordinal
        );
        Assert.Equal(
            "forward edge and after edge, out from the line: under 1/32\" all along, to be taken from the pattern",
            Assert.Single(CardSubject.EdgeLines(plank, LengthUnit.Foot))
        );
        // An edge shorter than the spacing has no ordinate, and no empty row of them.
        Plank hollow = plank.Shaped(s =>
            s with
            {
                After = s.After with
                {
                    HollowMm = 1.2,
                    Flat = [new(0, 75), new(60, 74), new(120, 75)],
                },
            }
        );
        Assert.StartsWith(
            "forward edge, out from the line: under",
            Assert.Single(CardSubject.EdgeLines(hollow, LengthUnit.Foot)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void ABendWithItsNumbers()
    {
        // 3700 / 9 = 411.1; 3700 mm = 12.139 ft; 3 degrees a metre = 0.9144 a foot.
        Plank bent = Plank.Bent(new(3700, 0.1216, -3, 0.01, 800, "cold"));
        Assert.Equal(
            "Bend: cold. Least radius 3.7 m, 411 times the thickness, 800 mm from the inboard net end; twist 3° a metre.",
            PlankWords.Bend(bent, 9, LengthUnit.Millimetre)
        );
        Assert.Equal(
            "Bend: cold. Least radius 12'-2\", 411 times the thickness, 2'-7 1/2\" from the inboard net end; twist 1° a foot.",
            PlankWords.Bend(bent, 9, LengthUnit.Foot)
        );
        Assert.Equal(
            "Bend: cold. As good as flat; twist 0° a metre.",
            PlankWords.Bend(Plank, 9, LengthUnit.Millimetre)
        );
        // A radius of 10,000 times the thickness or more is none, and the inboard end itself is no distance.
        Assert.Equal(
            "Bend: cold. As good as flat; twist 3° a metre.",
            PlankWords.Bend(
                Plank.Bent(new(90_001, 0.005, -3, 0.01, 800, "cold")),
                9,
                LengthUnit.Millimetre
            )
        );
        Assert.Equal(
            "Bend: cold. Least radius 3.7 m, 411 times the thickness, at the inboard net end; twist 3° a metre.",
            PlankWords.Bend(
                Plank.Bent(new(3700, 0.1216, -3, 0.01, 0.1, "cold")),
                9,
                LengthUnit.Millimetre
            )
        );
    }

    [Fact]
    public void FittedAtBothEnds()
    {
        BottomPlan plan = PrismaticPlan.Build(
            new(Ends: EndRules.Default with { Upper = EndRule.Fit })
        );
        Assert.Equal(
            "Fits at both ends and drops in from outside. Left to scribe away: 15 mm at the chine.",
            PlankWords.DropIn(plan.Find("S1-17")!, LengthUnit.Millimetre)
        );
        Assert.Contains(
            "does not drop in",
            PlankWords.DropIn(plan.Find("S1-17")!.Fitted(new(true, false)), LengthUnit.Millimetre),
            StringComparison.Ordinal
        );
        Assert.Equal("", PlankWords.DropIn(Plank, LengthUnit.Millimetre));
    }
}
