using System.Collections.Immutable;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Rows;

namespace PlankFit.Nesting.Mix;

/// <summary>
/// Of a stock of very many boards, those that the search is made with. The others are not forgotten: near-equal ones are taken together as one that is as long and as wide
/// as any of them, which bounds what they could give, each for its own width and cost.
/// </summary>
internal static class BoardChoice
{
    /// <summary>So many kinds of board are searched with; of fewer, all.</summary>
    public const int Most = 100;

    /// <summary>But as many as have so many times the wood of the pieces.</summary>
    private const double Ample = 2.5;

    /// <summary>Boards are near-equal whose lengths differ by less than this part.</summary>
    private const double NearLength = 0.002;

    /// <summary>Boards for a first search: of every length and width some, the cheapest for their area first.</summary>
    /// <param name="heights">Of the things to be laid, mm.</param>
    public static ImmutableArray<BoardType> First(
        ImmutableArray<BoardType> all,
        double[] heights,
        double woodMm2,
        double kerfMm
    )
    {
        if (all.Length <= Most)
        {
            return all;
        }

        double near = NearLength;
        IGrouping<object, BoardType>[] groups;
        do
        {
            groups = [.. all.GroupBy(b => Near(b, near, heights, kerfMm))];
            near *= 1.5;
        } while (groups.Length > Most / 2);

        BoardType[][] cheapest =
        [
            .. groups.Select(g => g.OrderBy(b => b.Cost / Clear(b)).ToArray()),
        ];
        var chosen = new HashSet<BoardType>(ReferenceEqualityComparer.Instance);
        double wood = 0;
        for (int turn = 0; cheapest.Any(g => turn < g.Length); turn++)
        {
            foreach (BoardType[] group in cheapest.Where(g => turn < g.Length))
            {
                if (chosen.Count >= Most && wood >= Ample * woodMm2)
                {
                    return With(all, chosen, heights, kerfMm);
                }

                chosen.Add(group[turn]);
                wood += Math.Max(0, Clear(group[turn])) * group[turn].Count;
            }
        }

        return all;
    }

    /// <summary>Boards for a second search: those of the first plan, for each of them the cheapest that hold what lies in it, and those that would have paid at the first search's prices.</summary>
    public static ImmutableArray<BoardType> Second(
        ImmutableArray<BoardType> all,
        NestProblem problem,
        CuttingPlan plan,
        ImmutableArray<BoardType> paying,
        double[] heights
    )
    {
        const int Better = 4;
        var chosen = new HashSet<BoardType>(ReferenceEqualityComparer.Instance);
        foreach (CuttingPlanBoard cut in plan.Boards)
        {
            BoardType used = problem.Boards[cut.Board];
            chosen.Add(used);
            double length = cut.Rows.Max(r => r.Row.LengthMm),
                width =
                    cut.Rows.GroupBy(r => r.Lane)
                        .Sum(l => l.Max(r => r.Row.HeightMm) + problem.KerfMm)
                    - problem.KerfMm
                    - problem.ProudMm;
            foreach (
                BoardType better in all.Where(b =>
                        b.Sort == used.Sort
                        && b.Cost < used.Cost
                        && b.Region.Faults.IsEmpty
                        && b.Region.LengthMm >= length
                        && b.Region.WidthMm >= width
                        && !chosen.Contains(b)
                    )
                    .OrderBy(b => b.Cost)
                    .Take(Better)
                    .ToArray()
            )
            {
                chosen.Add(better);
            }
        }

        foreach (
            BoardType board in paying.Take(Most).Concat(problem.Boards.Where(b => !b.OnlyBounds))
        )
        {
            if (chosen.Count >= Most * 3 / 2)
            {
                break;
            }

            chosen.Add(board);
        }

        return With(all, chosen, heights, problem.KerfMm);
    }

    /// <summary>The chosen, and the rest by groups.</summary>
    private static ImmutableArray<BoardType> With(
        ImmutableArray<BoardType> all,
        HashSet<BoardType> chosen,
        double[] heights,
        double kerfMm
    ) =>
        [
            .. all.Where(chosen.Contains),
            .. all.Where(b => !chosen.Contains(b))
                .GroupBy(b => Near(b, NearLength, heights, kerfMm))
                .Select(g => new BoardType(
                    [],
                    g.First().Sort,
                    (int)Math.Min(int.MaxValue, g.Sum(b => (long)b.Count)),
                    g.Min(b => b.Asked),
                    g.Min(b => b.Cost),
                    g.Min(b => b.AreaMm2),
                    new(0, g.Max(b => b.Region.LengthMm), 0, g.Max(b => b.Region.WidthMm), [])
                )
                {
                    Merged = [.. g],
                }),
        ];

    private static double Clear(BoardType board) =>
        (board.Region.LengthMm * board.Region.WidthMm)
        - board.Region.Faults.Sum(f => (f.ToU - f.FromU) * (f.HighV - f.LowV));

    /// <summary>Boards of nearly one length that take the same things, and as many of the lowest abreast.</summary>
    private static object Near(BoardType board, double near, double[] heights, double kerfMm) =>
        (
            board.Sort,
            board.Asked > 0,
            (int)Math.Floor(Math.Log(Math.Max(1, board.Region.LengthMm)) / Math.Log(1 + near)),
            heights.Count(h => h <= board.Region.WidthMm),
            (int)((board.Region.WidthMm + kerfMm) / (heights[^1] + kerfMm))
        );
}
