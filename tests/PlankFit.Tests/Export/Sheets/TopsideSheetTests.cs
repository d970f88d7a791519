using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Export.Cards;
using PlankFit.Export.Checks;
using PlankFit.Export.Lists;
using PlankFit.Export.Panels;
using PlankFit.Export.Patterns;
using PlankFit.Export.Tables;
using PlankFit.Export.Timber;
using PlankFit.Export.Views;
using PlankFit.Export.Whole;
using PlankFit.Geometry.Development;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Panels;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>The sheets of topsides: all planks on them, by names that no other plank has, and all of it to be read.</summary>
public sealed class TopsideSheetTests
{
    private const string LongNames = "long names";

    public static TheoryData<string> Plans => ["day-launch", "1", LongNames];

    private static BottomPlan Plan(string name)
    {
        if (name == "day-launch")
        {
            return DemoPlans.Of(name);
        }

        (string job, string offsets) =
            name == LongNames
                ? ChanceTopside.Of(
                    3,
                    (
                        "upper side between the second knuckle and the covering board",
                        "chine, outside of both skins, faired anew",
                        "sheer, to the top of the covering board"
                    )
                )
                : ChanceTopside.Of(int.Parse(name, CultureInfo.InvariantCulture));
        ReadResult read = JobReader.Read(job, "job.toml", offsets, "offsets.csv");
        Assert.True(
            read.Job is not null,
            string.Join("\n", read.Findings.Select(f => f.Where + ": " + f.Message)) + job
        );
        return PlankFit.Tests.Planking.WholeBottomTests.Planned(read.Job!);
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void SheetsAreLegible(string name)
    {
        BottomPlan plan = Plan(name);
        BottomPlan topside = Assert.Single(plan.Others);
        Drawing[] sheets =
        [
            .. CheckBeforeSawing.Of(topside),
            .. Some(PlankListPages.Of(OnPlanks.Of(topside))),
            .. Some(PlankCardPages.Of(OnPlanks.Of(topside))),
            .. topside.JobTimber is { } wood ? Some(TimberSheets.Of(topside, wood)) : [],
            .. topside.PlankLayers.SelectMany(l =>
                Some(FullSizePattern.Of(OnPlanks.Of(topside), l, Side.Starboard))
            ),
            .. topside.PlankLayers.Select(l => BottomPlanView.Of(topside, l)),
            .. topside.PlankLayers.Select(l => ShellExpansion.Of(topside, l)),
            .. PanelSheets.Pages(topside, BottomPanel.Develop(topside.Planked, PanelOptions.Usual)),
        ];
        string[] faults = [.. sheets.SelectMany(s => SheetCheck.Faults(s))];
        Assert.True(faults.Length == 0, string.Join("\n", faults.Distinct().Take(12)));
    }

    /// <summary>The first, the last and some between: the others are like them.</summary>
    private static IEnumerable<Drawing> Some(ImmutableArray<Drawing> pages) =>
        pages.Where((_, i) => i % 9 == 0 || i == pages.Length - 1);

    [Fact]
    public void EveryPlankOfATopsideIsNumberedOnceASide()
    {
        BottomPlan topside = DemoPlans.Of("day-launch").Others[0];
        foreach (PlankLayerPlan layer in topside.PlankLayers)
        {
            string[] inPlan =
            [
                .. BottomPlanView
                    .Of(topside, layer)
                    .Shapes.OfType<Lettering>()
                    .Where(l => l.Anchor == Anchor.MiddleCentre)
                    .Select(l => l.Text),
            ];
            Assert.All(layer.Starboard, p => Assert.Equal(2, inPlan.Count(t => t == p.Id.Short)));
        }
    }

    [Fact]
    public void CardsAndListsHaveEveryPlankOfEveryPanel()
    {
        BottomPlan plan = DemoPlans.Of("day-launch");
        string[] onCards = [.. PlankCardPages.Of(OnPlanks.Of(plan)).SelectMany(Lettered)],
            inList = [.. PlankListPages.Of(OnPlanks.Of(plan)).SelectMany(Lettered)];
        foreach (
            Plank plank in plan.AllPlankLayers.SelectMany(l =>
                l.Layer.Starboard.Concat(l.Layer.Port)
            )
        )
        {
            Assert.Contains(onCards, t => t == plank.Id.ToString() || t == $"and {plank.Id}");
            Assert.Contains(plank.Id.ToString(), inList);
        }

        Table table = PlankTables.Planks(plan);
        Assert.Equal(
            plan.AllPlankLayers.Sum(l => l.Layer.Starboard.Length + l.Layer.Port.Length),
            table.Rows.Length
        );
        Assert.Contains(table.Columns, c => c.Name == "outboard or upper end at");
        Assert.DoesNotContain(table.Columns, c => c.Name == "angle at keel deg");
    }

    private static IEnumerable<string> Lettered(Drawing sheet) =>
        sheet
            .Shapes.OfType<Lettering>()
            .Where(l => l.Anchor != Anchor.BaselineRight)
            .Select(l => l.Text);
}
