using System.Collections.Immutable;
using PlankFit.Export.Fastenings;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>Short lists that belong together share a page, each under its own name; one that does not fit there has a page of its own.</summary>
public sealed class ListsTogetherTests
{
    private static readonly string[] Names =
    [
        "Fastenings to buy",
        "Fastenings by layer and side",
        "How the lengths come about",
    ];

    [Theory]
    [InlineData(LengthUnit.Millimetre)]
    [InlineData(LengthUnit.FeetInchesEighths)]
    public void WhatToBuyAndTheCountsOfALaunchAreOnePage(LengthUnit unit)
    {
        BottomPlan plan = DemoPlans.Of("survey-launch");
        plan = plan with { Job = plan.Job with { Units = unit } };
        ImmutableArray<Drawing> pages = FasteningShopping.Of(plan, plan.Fastenings!);
        Assert.Equal(2, pages.Length);
        Assert.All(Names[..2], name => Assert.Contains(name, Words([pages[0]])));
        Assert.Contains(Names[2], Words([pages[1]]));
        Assert.Equal("", string.Join('\n', pages.SelectMany(p => SheetCheck.Faults(p))));
    }

    private static string[] Words(IEnumerable<Drawing> pages) =>
        [.. pages.SelectMany(p => p.Shapes.OfType<Lettering>()).Select(l => l.Text)];
}
