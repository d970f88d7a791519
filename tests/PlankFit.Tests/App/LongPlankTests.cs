using PlankFit.App.Laying;
using PlankFit.Draughting.Skia;
using PlankFit.Export.Cards;
using PlankFit.Export.Whole;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Reading.Jobs;

namespace PlankFit.Tests.App;

/// <summary>A plank longer than any page of a PDF has its pattern in lengths of a roll: the run does not end in the middle of it.</summary>
public sealed class LongPlankTests
{
    [Fact]
    public void ItsPatternIsCutIntoLengthsOfARoll()
    {
        BottomPlan plan = TenTimesAsLong();
        PlankLayerPlan layer = plan.PlankLayers.First();
        int over = layer.Starboard.Count(p => p.CutLengthMm > PdfWriter.LongestMm);
        Assert.InRange(over, 1, layer.Starboard.Length - 1);
        IReadOnlyList<Drawing> pages = PlankFiles.Patterns(
            DrawnSides.Of(OnPlanks.Of(plan)),
            plan,
            layer,
            Side.Starboard
        );
        Assert.All(pages, p => Assert.True(LongPages.IsTaken(p), $"{p.WidthMm} by {p.HeightMm}"));
        Assert.All(
            layer.Starboard,
            plank =>
                Assert.InRange(
                    pages.Count(p => p.Title.Contains($"{plank.Id},", StringComparison.Ordinal)),
                    plank.CutLengthMm > PdfWriter.LongestMm ? 2 : 1,
                    4
                )
        );
    }

    private static BottomPlan TenTimesAsLong() =>
        BottomPlanner
            .Plan(Texts.Sound(Texts.Job.Replace("units = \"mm\"", "units = \"cm\"")))
            .Plan!;
}
