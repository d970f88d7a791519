using System.Collections.Immutable;
using PlankFit.App.Planning;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Showing;

/// <summary>A plan with its pieces laid out in the stock, searched for as `nest` searches.</summary>
public static class ShownBoards
{
    /// <param name="before">A plan with boards, of which those are taken over where they would be the same.</param>
    /// <param name="progress">Told whenever a better plan or a better bound is found.</param>
    /// <param name="enough">Ends the search with the best plan so far; nothing is thrown for it.</param>
    public static BottomPlan Search(
        BottomPlan plan,
        BottomPlan? before,
        IProgress<PlanProgress> progress,
        CancellationToken enough
    ) => Planner.InBoards(plan, before, progress, new(), enough);

    /// <summary>By plank the boards that its pieces come out of.</summary>
    public static ImmutableDictionary<string, string> ByPlank(BottomPlan plan) =>
        (plan.Nest?.Boards ?? [])
            .SelectMany(b => b.Pieces.Select(p => (p.Piece.Id.Plank, Board: b.Id)))
            .GroupBy(x => x.Plank)
            .ToImmutableDictionary(
                g => g.Key.ToString(),
                g => string.Join(", ", g.Select(x => x.Board).Distinct())
            );
}
