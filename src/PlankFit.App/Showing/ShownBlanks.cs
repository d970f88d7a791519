using System.Collections.Immutable;
using PlankFit.App.Planning;
using PlankFit.Export.Checks;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Showing;

/// <summary>The blanks of the check sheet, as `lay` has it.</summary>
public static class ShownBlanks
{
    public static ImmutableArray<BlankGroup> Of(BottomPlan plan) =>
        CheckBlanks.Of(plan, Advised.Of(plan));
}
