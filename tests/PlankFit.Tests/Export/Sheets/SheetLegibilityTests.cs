using PlankFit.Export;
using PlankFit.Export.Sheets;
using PlankFit.Planking;
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
    public void Check_sheets_are_legible(string name) =>
        None(CheckBeforeSawing.Of(Plan(name)).SelectMany(d => SheetCheck.Faults(d)));

    [Theory]
    [MemberData(nameof(Plans))]
    public void Plan_views_are_legible(string name)
    {
        BottomPlan plan = Plan(name);
        None(plan.PlankLayers.SelectMany(l => SheetCheck.Faults(BottomPlanView.Of(plan, l))));
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void Shell_expansions_are_legible(string name)
    {
        BottomPlan plan = Plan(name);
        None(plan.PlankLayers.SelectMany(l => SheetCheck.Faults(ShellExpansion.Of(plan, l))));
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void Plank_lists_are_legible(string name) =>
        None(
            PlankListPages
                .Of(Plan(name))
                .SelectMany(d => SheetCheck.Faults(d).Concat(SheetCheck.Struck(d, _ => true)))
        );

    [Theory]
    [MemberData(nameof(Plans))]
    public void Plank_cards_are_legible(string name) =>
        None(
            PlankCardPages
                .Of(Plan(name))
                .SelectMany(d => SheetCheck.Faults(d).Concat(SheetCheck.Struck(d, _ => true)))
        );

    [Theory]
    [MemberData(nameof(Plans))]
    public void Full_size_patterns_are_legible(string name)
    {
        BottomPlan plan = Plan(name);
        None(
            plan.PlankLayers.SelectMany(l => FullSizePattern.Of(plan, l, Side.Starboard))
                .SelectMany(d => SheetCheck.Faults(d))
        );
    }

    /// <summary>A number that a line runs through is read wrong: 1 and 11, 35 and 36.</summary>
    [Theory]
    [MemberData(nameof(Plans))]
    public void No_line_runs_through_a_number_of_the_views(string name)
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
