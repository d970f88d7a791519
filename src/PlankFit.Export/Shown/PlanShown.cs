using System.Collections.Immutable;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Shown;

/// <summary>A plan as its planks are shown on cards, patterns and in planking.json: with what its features add to them.</summary>
public sealed record PlanShown(BottomPlan Plan)
{
    /// <summary>In the order in which it is shown.</summary>
    internal ImmutableArray<IOnPlanks> Added { get; init; } = [];

    /// <summary>One of its panels so: what is added is the plan's own panel's.</summary>
    internal PlanShown On(BottomPlan panel) => ReferenceEquals(panel, Plan) ? this : new(panel);
}
