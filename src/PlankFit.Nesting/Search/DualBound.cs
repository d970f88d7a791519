using System.Collections.Immutable;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Rows;

namespace PlankFit.Nesting.Search;

/// <summary>
/// A value below which no plan in rows can come, from any worth of things (Lagrange and Farley, from memory): all things together are worth so much, and no board can
/// yield more than the dearest that lies in it, of which it pays its own cost.
/// </summary>
internal static class DualBound
{
    /// <param name="items">What each thing is worth, nought or more.</param>
    /// <param name="rows">At these worths.</param>
    public static Bounds Of(NestProblem problem, Share share, double[] items, DearestRows rows)
    {
        double all = 0;
        for (int i = 0; i < items.Length; i++)
        {
            all += share.Items[i] * items[i];
        }

        var yields = new List<(double Yield, BoardType Board, int Count)>();
        for (int b = 0; b < problem.Boards.Length; b++)
        {
            BoardType type = problem.Boards[b];
            if (share.Boards[b] > 0 && type.OnlyBounds)
            {
                // What yields no more than it costs changes no bound.
                yields.AddRange(
                    Merged(problem, b, rows)
                        .Where(m => m.Yield > Math.Min(m.Board.Cost, m.Board.Asked))
                        .Select(m => (m.Yield, m.Board, m.Board.Count))
                );
            }
            else if (share.Boards[b] > 0)
            {
                yields.Add(
                    (problem.Lanes[b].AtMost(Values(problem, type, rows)), type, share.Boards[b])
                );
            }
        }

        double cost = Best(all, yields, b => b.Cost);
        return new(cost, problem.CostsAreAsked ? cost : Best(all, yields, b => b.Asked));
    }

    /// <summary>Boards that the search leaves alone and that yield more than they cost, those that yield most above it first.</summary>
    public static ImmutableArray<BoardType> Paying(
        NestProblem problem,
        Share share,
        DearestRows rows
    ) =>
        [
            .. Enumerable
                .Range(0, problem.Boards.Length)
                .Where(b => share.Boards[b] > 0 && problem.Boards[b].OnlyBounds)
                .SelectMany(b => Merged(problem, b, rows))
                .Where(m => m.Yield > m.Board.Cost)
                .OrderByDescending(m => m.Yield - m.Board.Cost)
                .Select(m => m.Board),
        ];

    /// <summary>The boards that one in the bound only stands for, and what none of their rippings is worth more than.</summary>
    private static IEnumerable<(BoardType Board, double Yield)> Merged(
        NestProblem problem,
        int board,
        DearestRows rows
    )
    {
        BoardType type = problem.Boards[board];
        return type.Merged.Zip(
            problem
                .Lanes[board]
                .AtMost(Values(problem, type, rows), type.Merged.Select(m => m.Region.WidthMm))
        );
    }

    /// <summary>What no row of a class and band is worth more than, by the length of a board's strip.</summary>
    private static Func<int, int, double, double> Values(
        NestProblem problem,
        BoardType type,
        DearestRows rows
    ) =>
        (c, band, length) =>
        {
            int kind = problem.Kind(c, type.Sort);
            BandAtMost most = rows.AtMost[kind][band];
            int j = type.OnlyBounds
                ? problem.BoundLengths(kind).IndexOf(length)
                : problem.Bucket(kind, length);
            return j < 0 ? most.Beyond
                : type.OnlyBounds ? most.Bounded[j]
                : most.Lengths[j];
        };

    /// <summary>Worths may all be made smaller by the same part; the best part is where some board just pays, or all of it.</summary>
    private static double Best(
        double all,
        List<(double Yield, BoardType Board, int Count)> yields,
        Func<BoardType, double> cost
    )
    {
        double[] parts =
        [
            .. yields
                .Where(y => y.Yield > 0)
                .Select(y => Math.Min(1, cost(y.Board) / y.Yield))
                .Append(1)
                .Distinct()
                .Order(),
        ];
        double Bound(double part) =>
            (part * all) - yields.Sum(y => y.Count * Math.Max(0, (part * y.Yield) - cost(y.Board)));
        // It rises with the part as long as the boards that pay yield less than all things are worth, and then falls.
        int low = 0,
            high = parts.Length - 1;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) =
                Bound(parts[middle]) < Bound(parts[middle + 1])
                    ? (middle + 1, high)
                    : (low, middle);
        }

        return Math.Max(0, Bound(parts[low])) * (1 - Slack);
    }

    /// <summary>
    /// As much cost as boards must have for so much wood to lie in them, the best for its cost first: at once, and without any row.
    /// </summary>
    public static Bounds ByArea(NestProblem problem, Share share)
    {
        double wood = share.Items.Select((n, i) => n * problem.Items[i].LeastAreaMm2).Sum();
        double Least(Func<BoardType, double> cost)
        {
            double left = wood,
                sum = 0;
            foreach (
                (BoardType board, int count, double room) in problem
                    .Boards.Select(
                        (b, i) =>
                            (
                                b,
                                share.Boards[i],
                                b.Region.LengthMm * (b.Region.WidthMm + problem.ProudMm)
                            )
                    )
                    .Where(b => b.Item2 > 0 && b.Item3 > 0)
                    .OrderBy(b => cost(b.b) / b.Item3)
            )
            {
                double part = Math.Min(left, count * room);
                sum += part / room * cost(board);
                left -= part;
            }

            return sum * (1 - Slack);
        }

        return new(Least(b => b.Cost), Least(b => b.Asked));
    }

    /// <summary>The next sum that costs can make, where they have a common measure.</summary>
    public static double Raised(IEnumerable<double> costs, double bound) =>
        Measure(costs) is not { } measure
            ? bound
            : measure * Math.Max(0, Math.Ceiling((bound / measure * (1 - Slack)) - Slack));

    /// <summary>All costs but noughts are whole multiples of it; null where they are not whole numbers.</summary>
    public static long? Measure(IEnumerable<double> costs)
    {
        long measure = 0;
        foreach (double cost in costs.Where(c => c != 0))
        {
            long whole = (long)Math.Round(cost);
            if (whole == 0 || Math.Abs(whole - cost) > 1e-6)
            {
                return null;
            }

            measure = (long)System.Numerics.BigInteger.GreatestCommonDivisor(measure, whole);
        }

        return measure == 0 ? null : measure;
    }

    /// <summary>What doubles and the solver's own tolerances may have added to a bound, as a part of it.</summary>
    private const double Slack = 1e-6;
}

/// <summary>No plan counts less: of costs, and of what is asked for alone.</summary>
internal readonly record struct Bounds(double Cost, double Asked)
{
    public Bounds Max(Bounds other) =>
        new(Math.Max(Cost, other.Cost), Math.Max(Asked, other.Asked));
}
