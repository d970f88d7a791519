using PlankFit.Export.Binding;
using PlankFit.Export.Summary;
using PlankFit.Export.Views;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>What the foot of every sheet says: the whole of the job's name, and no page of one.</summary>
public sealed class TitleBlockTests
{
    /// <summary>As long as a name may be: a hundred signs.</summary>
    private const string Long =
        "Hulls four, five and six of the harbour board's survey launches, as built to the second set of lines";

    public static TheoryData<PaperSize> Papers => [PaperSize.A4, PaperSize.Letter];

    [Theory]
    [MemberData(nameof(Papers))]
    public void TheLongestNameStandsWholeOnSheetsOfAllShapes(PaperSize paper)
    {
        Assert.Equal(100, Long.Length);
        BottomPlan plan = DemoPlans.Of("tender");
        Job job = plan.Job with { Name = Long, Output = plan.Job.Output with { Paper = paper } };
        plan = plan with { Job = job };
        Drawing[] sheets =
        [
            .. BeforeYouSawPages.Of(plan),
            BottomPlanView.Of(plan, plan.PlankLayers.First()),
            BenchBook.Of(job, [new("Before you saw", BeforeYouSawPages.Of(plan))]).Pages[0],
        ];
        foreach (Drawing sheet in sheets)
        {
            Assert.Contains(
                Long,
                string.Join(' ', sheet.Shapes.OfType<Lettering>().Select(l => l.Text)),
                StringComparison.Ordinal
            );
            Drawing unnumbered = sheet with
            {
                Shapes =
                [
                    .. sheet.Shapes.Where(s =>
                        s is not Lettering l
                        || !l.Text.StartsWith("bench book, page", StringComparison.Ordinal)
                    ),
                ],
            };
            string[] faults =
            [
                .. SheetCheck.Faults(unnumbered),
                .. SheetCheck.Struck(unnumbered, _ => true),
                .. BlockCheck.Intruders(unnumbered),
            ];
            Assert.True(faults.Length == 0, string.Join("\n", faults.Take(9)));
        }
    }

    [Fact]
    public void ASheetByItselfIsNoPageOfOne()
    {
        BottomPlan plan = DemoPlans.Of("tender");
        Drawing view = BottomPlanView.Of(plan, plan.PlankLayers.First());
        Assert.DoesNotContain("page", view.Title, StringComparison.Ordinal);
        Assert.DoesNotContain(view.Shapes.OfType<Lettering>(), l => l.Text is "page" or "of 1");
    }

    private static BottomPlan Planned(int seed) => ChanceAsked.Plan(seed)!.Others[0];

    /// <summary>A topside seen from both sides says so once, in its title block and in the contents.</summary>
    [Fact]
    public void BothSidesAreNamedOnce()
    {
        BottomPlan topside = Planned(4);
        Drawing view = BottomPlanView.Of(topside, topside.PlankLayers.First());
        Assert.Equal(2, view.Title.Split("both sides").Length);
        Assert.Equal(2, view.FoundBy[0].Split("both sides").Length);
    }
}
