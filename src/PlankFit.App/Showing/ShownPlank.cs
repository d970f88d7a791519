using PlankFit.App.Explaining;
using PlankFit.Export.Cards;
using PlankFit.Export.Whole;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Showing;

/// <summary>One plank as the bench reads it, the same as the files have it.</summary>
public static class ShownPlank
{
    /// <summary>Its card.</summary>
    public static Drawing Card(BottomPlan plan, Plank plank) =>
        PlankCardPages.Single(OnPlanks.Of(plan.PanelOf(plank.Id)), plan.LayerOf(plank.Id), plank);

    /// <summary>How it came to be, as `explain` tells it.</summary>
    public static string Story(BottomPlan plan, Plank plank) =>
        ExplainRun.Of(plan, plank.Id.ToString()).Result ?? "";
}
