using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>The cuts of every board of a plan, with the tolerances that its job allows.</summary>
public static class NestCuts
{
    public static ImmutableArray<BoardCutList> Of(BottomPlan plan) =>
        plan.Nest is not { } nest ? [] : [.. nest.Boards.Select(b => Of(plan, b))];

    /// <exception cref="InvalidOperationException">Nothing is laid out.</exception>
    public static BoardCutList Of(BottomPlan plan, SawnBoard board) =>
        BoardCuts.Of(
            board,
            plan.Nest?.Spec ?? throw new InvalidOperationException("nothing is laid out"),
            Tolerances(plan.Job)
        );

    /// <summary>An edge is left as it was ripped where glue is trusted with what is missing or over.</summary>
    public static SawTolerances Tolerances(Job job) =>
        SawTolerances.Usual with
        {
            EdgeMm = job
                .Layers.OfType<PlankLayerSpec>()
                .Select(l => l.GapMm)
                .DefaultIfEmpty(SawTolerances.Usual.EdgeMm)
                .Min(),
        };
}
