using PlankFit.Export.Cards;
using PlankFit.Export.Patterns;
using PlankFit.Export.Whole;
using PlankFit.Export.Words;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>
/// What cards, lists and patterns say of a plank, against figures worked by hand for a plane bottom: deadrise 20°, chine 1000 mm out, two layers of 9 mm to the
/// outside, planks of 150 mm at 45°, chine left long by 25 mm. The inner layer's middle lies 13.5 mm inside the table's plane, so the plumb keel side cuts it
/// 13.5 tan 20° = 4.9136 mm out along the slant; the chine is 1000 / cos 20° = 1064.1778 mm out.
/// Net length (1064.1778 − 4.9136) / sin 45° = 1498.0258 mm. Overall: that, 150 mm for the slant of the ends, 25 / sin 45° = 35.3553 mm past the chine,
/// and 4.5 tan 20° / sin 45° = 2.3163 mm for the outer face at the keel: 1685.6974 mm. Both are rounded up on paper.
/// </summary>
public sealed class CardFiguresTests
{
    [Theory]
    [InlineData(
        LengthUnit.Millimetre,
        "to saw 1686 mm",
        "net 1498.5 mm",
        "150",
        "fall 150 across 150",
        "outer face longer by 3.5 mm",
        "1498.5",
        "1686"
    )]
    [InlineData(
        LengthUnit.FeetInchesEighths,
        "to saw 5'-6 3/8\"",
        "net 4'-11\"",
        "5 29/32\"",
        "fall 5 29/32\" across 5 29/32\"",
        "outer face longer by 1/8\"",
        "4'-11\"",
        "5'-6 3/8\""
    )]
    public void TheMastersFiguresAreThoseWorkedByHand(
        LengthUnit unit,
        string saw,
        string net,
        string width,
        string fall,
        string face,
        string listNet,
        string listSaw
    )
    {
        Job job = PrismaticPlan.Build(new Prism(Units: unit)).Job;
        BottomPlan plan = WholeBottomTests.Planned(job);
        PlankLayerPlan layer = plan.PlankLayers.First();
        foreach (
            Plank plank in new[]
            {
                layer.Starboard[layer.MasterNumber - 1],
                layer.Port[layer.MasterNumber - 1],
            }
        )
        {
            string card = Words(PlankCardPages.Single(OnPlanks.Of(plan), layer, plank));
            foreach (
                string figure in new[]
                {
                    plank.Id.ToString(),
                    saw,
                    net,
                    width,
                    fall,
                    face,
                    "45° off square",
                    "bevel 20°",
                }
            )
            {
                Assert.Contains(figure, card, StringComparison.Ordinal);
            }

            // At the keel the corner further inboard is the longer: forward on a plank that heads aft.
            Assert.Contains("leans aft going outboard", card, StringComparison.Ordinal);
            Assert.Contains("forward corner the longer", card, StringComparison.Ordinal);

            Drawing page = PlankListPages
                .Of(OnPlanks.Of(plan))
                .First(d => d.Shapes.OfType<Lettering>().Any(l => l.Text == plank.Id.ToString()));
            double top = page
                .Shapes.OfType<Lettering>()
                .Where(l => l.Text == plank.Id.ToString() || l.Text == plank.Id.Twin.ToString())
                .Max(l => l.At.Y);
            string row = string.Join(
                ' ',
                page.Shapes.OfType<Lettering>()
                    .Where(l => l.At.Y < top + 4 && l.At.Y > top - 18)
                    .Select(l => l.Text)
            );
            Assert.Contains(listSaw, row, StringComparison.Ordinal);
            Assert.Contains(listNet, row, StringComparison.Ordinal);

            string pattern = Words(FullSizePattern.Page(OnPlanks.Of(plan), layer, plank));
            Assert.Contains(plan.Job.Revision, pattern, StringComparison.Ordinal);
            Assert.Contains("45° from square", pattern, StringComparison.Ordinal);
        }
    }

    /// <summary>A plank of many ends, on the narrowest page: nothing that the pattern has to say is left out.</summary>
    [Theory]
    [InlineData("survey-launch")]
    [InlineData("pilot-skiff")]
    [InlineData("tender")]
    public void NoPatternLeavesWordsOut(string hull)
    {
        BottomPlan plan = DemoPlans.Of(hull);
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            foreach (Plank plank in layer.Starboard)
            {
                Drawing page = FullSizePattern.Page(OnPlanks.Of(plan), layer, plank);
                string words = Words(page);
                Assert.Contains("dashed one the inner.", words, StringComparison.Ordinal);
                Assert.All(
                    plank.Ends,
                    e =>
                        Assert.Contains(
                            e.Word + ", " + EndWords.Cut(e, plan.Job.Units).Split(',')[0],
                            words,
                            StringComparison.Ordinal
                        )
                );
                Assert.All(
                    page.Shapes.OfType<Lettering>(),
                    l => Assert.InRange(l.At.Y, 4, page.HeightMm - 4)
                );
            }
        }
    }

    /// <summary>More ends than any plank has: the page grows, and the last words are still there and on it.</summary>
    [Fact]
    public void ThePageGrowsWithItsWords()
    {
        BottomPlan plan = DemoPlans.Of("tender");
        PlankLayerPlan layer = plan.PlankLayers.First();
        Plank plank = layer.Starboard[0],
            many = plank.Ended(Enumerable.Repeat(plank.Ends, 5).SelectMany(e => e));
        Drawing usual = FullSizePattern.Page(OnPlanks.Of(plan), layer, plank),
            grown = FullSizePattern.Page(OnPlanks.Of(plan), layer, many);
        Assert.True(grown.HeightMm > usual.HeightMm + 10);
        Assert.Contains("dashed one the inner.", Words(grown), StringComparison.Ordinal);
        Assert.All(
            grown.Shapes.OfType<Lettering>(),
            l => Assert.InRange(l.At.Y, 4, grown.HeightMm - 4)
        );
    }

    private static string Words(Drawing drawing) =>
        string.Join(' ', drawing.Shapes.OfType<Lettering>().Select(l => l.Text));
}
