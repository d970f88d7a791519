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

            foreach (
                ImmutableArray<CuttingPlanBoard> these in Equal(problem, boards, one, patience)
            )
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

    /// <summary>Two or three boards that count together what the one does, in area as well as in money.</summary>
    private static IEnumerable<ImmutableArray<CuttingPlanBoard>> Equal(
        NestProblem problem,
        ImmutableArray<CuttingPlanBoard> boards,
        int one,
        Patience patience
    )
    {
        double whole = problem.Boards[one].AreaMm2;
        double[] areas = [.. boards.Select(b => problem.Boards[b.Board].AreaMm2)];
        double[] sorted = [.. areas.Order()];
        int[] bySize = [.. Enumerable.Range(0, areas.Length).OrderBy(b => areas[b])];
        if (sorted.Length < 2 || 2 * sorted[0] > whole * (1 + Summing))
        {
            yield break;
        }

        bool IsEqual(params ReadOnlySpan<int> these)
        {
            double Over(Func<BoardType, double> of, ReadOnlySpan<int> these)
            {
                double sum = 0;
                foreach (int b in these)
                {
                    sum += of(problem.Boards[boards[b].Board]);
                }

                return Math.Abs((sum / of(problem.Boards[one])) - 1);
            }

            bool spared = true;
            foreach (int b in these)
            {
                spared &= problem.Boards[boards[b].Board].Asked == 0;
            }

            return Over(b => b.AreaMm2, these) <= Summing
                && Over(b => b.Cost, these) <= Summing
                && (problem.Boards[one].Asked == 0 ? spared : Over(b => b.Asked, these) <= Summing);
        }

        // The last is looked up by the area that is missing: of hundreds of boards there are millions of threes.
        IEnumerable<int> Missing(double area, int after)
        {
            double within = 2 * Summing * whole;
            int from = Array.BinarySearch(sorted, area - within);
            from = from < 0 ? ~from : from;
            while (from > 0 && sorted[from - 1] >= area - within)
            {
                from--;
            }

            int to = from;
            while (to < sorted.Length && sorted[to] <= area + within)
            {
                to++;
            }

            return bySize[from..to].Where(b => b > after).Order();
        }

        for (int a = 0; a < areas.Length && !patience.IsOver; a++)
        {
            for (
                int b = a + 1;
                areas[a] + sorted[0] <= whole * (1 + Summing) && b < areas.Length;
                b++
            )
            {
                double left = whole - areas[a] - areas[b];
                if (IsEqual(a, b))
                {
                    yield return [boards[a], boards[b]];
                }
                else if (left >= sorted[0] * (1 - Summing))
                {
                    foreach (int c in Missing(left, b).Where(c => IsEqual(a, b, c)))
                    {
                        yield return [boards[a], boards[b], boards[c]];
                    }
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
