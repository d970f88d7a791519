using System.Collections.Immutable;
using PlankFit.Nesting.Effort;
using PlankFit.Nesting.Mix;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Rows;
using PlankFit.Nesting.Search;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting;

/// <summary>
/// Of plans that count the same the one of fewer boards: what two or three boards hold goes into one that counts as much as they do together, if that leaves no
/// smaller a piece in one.
/// </summary>
internal static class JoinedBoards
{
    private const int MostJoined = 3;

    /// <summary>So many boards are tried: some tenths of a second, and it ends in the same place on any machine.</summary>
    private const int Tries = 200;

    /// <summary>What sums of doubles lose, as a part of a board.</summary>
    private const double Summing = 1e-12;

    /// <summary>Offcuts that differ by no more are as large.</summary>
    private const double EqualMm2 = 1;

    public static CuttingPlan Of(
        NestSpec spec,
        NestProblem problem,
        CuttingPlan plan,
        Patience patience
    )
    {
        int tries = Tries;
        while (Joined(spec, problem, plan, patience, ref tries) is { } joined)
        {
            plan = joined;
        }

        return plan;
    }

    private static CuttingPlan? Joined(
        NestSpec spec,
        NestProblem problem,
        CuttingPlan plan,
        Patience patience,
        ref int tries
    )
    {
        int[] left = [.. Share.AllOf(problem).Boards];
        foreach (CuttingPlanBoard board in plan.Boards)
        {
            left[board.Board]--;
        }

        // The emptiest first: they are the likeliest to go into one.
        ImmutableArray<CuttingPlanBoard> boards =
        [
            .. plan.Boards.OrderBy(b => b.Filled(problem) * problem.Boards[b.Board].AreaMm2),
        ];
        foreach (int one in Enumerable.Range(0, left.Length).Where(b => left[b] > 0))
        {
            if (problem.Boards[one].OnlyBounds)
            {
                continue;
            }

            foreach (ImmutableArray<CuttingPlanBoard> these in Equal(problem, boards, one, [], 0))
            {
                if (tries-- <= 0 || patience.IsOver)
                {
                    return null;
                }

                if (InOne(spec, problem, these, one, patience) is { } joined)
                {
                    return new([.. plan.Boards.Except(these), joined]);
                }
            }
        }

        return null;
    }

    /// <summary>Boards that count together what the one does, in area as well as in money.</summary>
    private static IEnumerable<ImmutableArray<CuttingPlanBoard>> Equal(
        NestProblem problem,
        ImmutableArray<CuttingPlanBoard> boards,
        int one,
        ImmutableArray<CuttingPlanBoard> chosen,
        int from
    )
    {
        double Over(Func<BoardType, double> of) =>
            (chosen.Sum(b => of(problem.Boards[b.Board])) / of(problem.Boards[one])) - 1;
        double area = Over(b => b.AreaMm2);
        if (area > Summing || chosen.Length > MostJoined)
        {
            yield break;
        }

        if (area >= -Summing)
        {
            if (
                Math.Abs(Over(b => b.Cost)) <= Summing
                && (problem.Boards[one].Asked == 0 || Math.Abs(Over(b => b.Asked)) <= Summing)
                && (
                    problem.Boards[one].Asked > 0
                    || chosen.All(b => problem.Boards[b.Board].Asked == 0)
                )
            )
            {
                yield return chosen;
            }

            yield break;
        }

        for (int b = from; b < boards.Length; b++)
        {
            foreach (
                ImmutableArray<CuttingPlanBoard> more in Equal(
                    problem,
                    boards,
                    one,
                    chosen.Add(boards[b]),
                    b + 1
                )
            )
            {
                if (more.Length > 1)
                {
                    yield return more;
                }
            }
        }
    }

    private static CuttingPlanBoard? InOne(
        NestSpec spec,
        NestProblem problem,
        ImmutableArray<CuttingPlanBoard> these,
        int one,
        Patience patience
    )
    {
        CuttingPlan now = new(these);
        int[] things = now.Counts(problem);
        CuttingPlan joined = FirstFit.Of(
            problem,
            new([.. things], [.. problem.Boards.Select((_, b) => b == one ? 1 : 0)]),
            new(problem.Ends),
            patience
        );
        return
            joined.Boards is [var board]
            && joined.Counts(problem).SequenceEqual(things)
            && Largest(spec, problem, joined) >= Largest(spec, problem, now) - EqualMm2
            ? board
            : null;
    }

    private static double Largest(NestSpec spec, NestProblem problem, CuttingPlan cutting) =>
        BoardLayout
            .Of(problem, cutting, new(problem.Items))
            .SelectMany(b => Offcuts.Of(spec, BoardCuts.Of(b, spec)))
            .Select(o => o.AreaMm2)
            .DefaultIfEmpty(0)
            .Max();
}
