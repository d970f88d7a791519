using PlankFit.Export.Cards;
using PlankFit.Export.Checks;
using PlankFit.Export.Patterns;
using PlankFit.Export.Views;
using PlankFit.Export.Whole;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>Every sheet of every hull: letterings apart, inside the frame and large enough.</summary>
public sealed class SheetLegibilityTests
{
    private const string Prism = "prism";
    private const string PrismInFeet = "prism in feet";

    private const string PrismOnLetter = "prism on Letter";

    public static TheoryData<string> Plans =>
        [Prism, PrismInFeet, PrismOnLetter, .. DemoTables.All.Select(d => d.Hull)];

    private static BottomPlan Plan(string name) =>
        name switch
        {
            Prism => PrismChecks.With(new(KeelHalfBreadthMm: 40)),
            PrismInFeet => PrismChecks.With(
                new(KeelHalfBreadthMm: 40, Units: LengthUnit.FeetInchesEighths)
            ),
            PrismOnLetter => PrismChecks.With(new(KeelHalfBreadthMm: 40, Units: LengthUnit.Inch))
                is var plan
                ? plan with
                {
                    Job = plan.Job with
                    {
                        Output = plan.Job.Output with { Paper = PaperSize.Letter },
                    },
                }
                : null!,
            _ => DemoPlans.Of(name),
        };

    [Theory]
    [MemberData(nameof(Plans))]
    public void CheckSheetsAreLegible(string name) =>
        None(CheckBeforeSawing.Of(Plan(name)).SelectMany(d => SheetCheck.Faults(d)));

    [Theory]
    [MemberData(nameof(Plans))]
    public void PlanViewsAreLegible(string name)
    {
        BottomPlan plan = Plan(name);
        None(plan.PlankLayers.SelectMany(l => SheetCheck.Faults(BottomPlanView.Of(plan, l))));
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void ShellExpansionsAreLegible(string name)
    {
        BottomPlan plan = Plan(name);
        None(plan.PlankLayers.SelectMany(l => SheetCheck.Faults(ShellExpansion.Of(plan, l))));
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void PlankListsAreLegible(string name) =>
        None(
            PlankListPages
                .Of(OnPlanks.Of(Plan(name)))
                .SelectMany(d => SheetCheck.Faults(d).Concat(SheetCheck.Struck(d, _ => true)))
        );

    [Theory]
    [MemberData(nameof(Plans))]
    public void PlankCardsAreLegible(string name) =>
        None(
            PlankCardPages
                .Of(OnPlanks.Of(Plan(name)))
                .SelectMany(d => SheetCheck.Faults(d).Concat(SheetCheck.Struck(d, _ => true)))
        );

    [Theory]
    [MemberData(nameof(Plans))]
    public void FullSizePatternsAreLegible(string name)
    {
        BottomPlan plan = Plan(name);
        None(
            plan.PlankLayers.SelectMany(l =>
                    FullSizePattern.Of(OnPlanks.Of(plan), l, Side.Starboard)
                )
                .SelectMany(d => SheetCheck.Faults(d))
        );
    }

    /// <summary>A number that a line runs through is read wrong: 1 and 11, 35 and 36.</summary>
    [Theory]
    [MemberData(nameof(Plans))]
    public void NoLineRunsThroughANumberOfTheViews(string name)
    {
        BottomPlan plan = Plan(name);
        IEnumerable<Drawing> views =
        [
            .. plan.PlankLayers.Select(l => BottomPlanView.Of(plan, l)),
            .. plan.PlankLayers.Select(l => ShellExpansion.Of(plan, l)),
            .. CheckBeforeSawing.Of(plan),
        ];
        None(views.SelectMany(d => SheetCheck.Struck(d, _ => true)));
    }

    private static void None(IEnumerable<string> faults)
    {
        string[] all = [.. faults];
        Assert.True(all.Length == 0, $"{all.Length} faults:\n" + string.Join("\n", all.Take(40)));
    }
}
