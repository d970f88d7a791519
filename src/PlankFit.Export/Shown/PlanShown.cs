using System.Collections.Immutable;
using PlankFit.Draughting.Bodies;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Shown;

/// <summary>A plan as its planks are shown on cards, patterns and in planking.json: with what its features add to them.</summary>
public sealed record PlanShown(BottomPlan Plan)
{
    /// <summary>In the order in which it is shown.</summary>
    internal ImmutableArray<IOnPlanks> Added { get; init; } = [];

    /// <summary>What features show beside the planks in the whole shape.</summary>
    internal IEnumerable<Body> Bodies() => Added.SelectMany(a => a.Bodies());

    /// <summary>How far each plank's length may be out either way, 19 times in 20, mm; empty where no feature knows.</summary>
    public ImmutableArray<double?> SureMm(IReadOnlyList<Plank> planks) =>
        [.. Added.SelectMany(a => a.SureMm(planks))];

    /// <summary>One of its panels so.</summary>
    internal PlanShown On(BottomPlan panel) => this with { Plan = panel };
}
