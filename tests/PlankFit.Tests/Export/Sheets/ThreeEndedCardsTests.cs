using PlankFit.Export.Cards;
using PlankFit.Export.Whole;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>A plank with three ends leaves its notes the least room, and feet and inches are the longest words: what finds none beside the figures stands across the foot.</summary>
public sealed class ThreeEndedCardsTests
{
    public static TheoryData<string, LengthUnit> Jobs =>
        new(
            from demo in new[] { "day-launch", "tender" }
            from unit in new[]
            {
                LengthUnit.Millimetre,
                LengthUnit.Inch,
                LengthUnit.FeetInchesEighths,
            }
            select (demo, unit)
        );

    [Theory]
    [MemberData(nameof(Jobs))]
    public void EveryCardIsLegibleAndHasAllOfItsEdges(string demo, LengthUnit unit)
    {
        Job job = DemoPlans.Of(demo).Job;
        BottomPlan plan = WholeBottomTests.Planned(job with { Units = unit });
        int seen = 0;
        foreach ((BottomPlan panel, PlankLayerPlan layer) in plan.AllPlankLayers)
        {
            foreach (Plank plank in layer.On(Side.Starboard).Where(p => p.Ends.Length > 2))
            {
                Drawing card = PlankCardPages.Single(OnPlanks.Of(panel), layer, plank);
                Assert.Equal("", string.Join("\n", SheetCheck.Faults(card).Take(6)));
                string words = string.Join(
                    ' ',
                    card.Shapes.OfType<Lettering>().Select(l => l.Text)
                );
                Assert.Equal(
                    plank.StraightEdges
                        ? 0
                        : (plank.ForwardEdge.Exists ? 1 : 0) + (plank.AfterEdge.Exists ? 1 : 0),
                    words.Split("out from the line every").Length - 1
                );
                seen++;
            }
        }

        Assert.True(seen > 1, $"{seen} cards");
    }
}
