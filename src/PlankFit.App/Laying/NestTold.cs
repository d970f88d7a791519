using System.Collections.Immutable;
using PlankFit.App.Running;
using PlankFit.Export.Stock;
using PlankFit.Export.Words;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>What is told of a plan of cutting when a run ends.</summary>
public static class NestTold
{
    /// <summary>Whether the stock reaches.</summary>
    public static ExitCode Exit(BottomPlan plan) =>
        plan.Nest is { Unplaced.IsEmpty: false } ? ExitCode.StockIsShort : ExitCode.Done;

    /// <summary>That the table is not fair, and what is missing: told before anything else.</summary>
    public static ImmutableArray<string> First(BottomPlan plan) =>
        [
            .. PlanWords.InMargin(plan.Job) is { Length: > 0 } unfair ? [unfair] : (string[])[],
            .. plan.Nest is { } nest ? NestWords.Missing(nest, plan.Job.Units) : [],
            .. Refused(plan),
        ];

    private static IEnumerable<string> Refused(BottomPlan plan)
    {
        PlankId[] refused =
        [
            .. plan.Nest is null
                ? []
                : plan
                    .AllPlankLayers.SelectMany(l => l.Layer.Starboard.Concat(l.Layer.Port))
                    .Where(p => p.IsRefused)
                    .Select(p => p.Id),
        ];
        if (refused.Length > 0)
        {
            yield return $"NOT IN THE BOARDS: {PlanWords.Count(refused.Length, "plank")}, of which the first is {refused[0]}. {RefusedBend.ToDo}.";
        }
    }

    /// <summary>What the plan takes, in a line a material.</summary>
    public static ImmutableArray<string> Lines(BottomPlan plan)
    {
        if (plan.Nest is not { } nest)
        {
            return [];
        }

        return
        [
            .. nest.Materials.Select(m =>
            {
                SawnBoard[] boards =
                [
                    .. nest.Boards.Where(b => b.Pieces.Any(p => m.PieceIds.Contains(p.Piece.Id))),
                ];
                string more =
                    nest.Unplaced.IsEmpty && NestWords.More(nest.Spec, m) is { Length: > 0 } worth
                        ? "; " + worth
                        : "";
                return $"{m.Name}: {boards.Sum(b => b.Pieces.Length)} pieces in {boards.Length} boards, {NestWords.Takes(m, plan.Job.Units)}{NestWords.Quality(nest, m, plan.Job.Units)}{more}.";
            }),
        ];
    }
}
