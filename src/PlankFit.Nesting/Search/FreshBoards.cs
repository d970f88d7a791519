using PlankFit.Nesting.Model;
using PlankFit.Nesting.Rows;

namespace PlankFit.Nesting.Search;

/// <summary>The boards that are not begun yet, and which of them is best begun for a thing. Of many things few differ in the lanes that they may lie in, so that little is worked out twice.</summary>
internal sealed class FreshBoards
{
    private readonly NestProblem problem;
    private readonly int[] left;

    /// <summary>By board and class of lane, the longest stretch that there may be; nought where there is none.</summary>
    private readonly double[][] longest;

    private readonly Dictionary<(int Board, string Serving), double> yields = [];
    private readonly Dictionary<(int Board, string Serving), Ripping> ripped = [];

    public FreshBoards(NestProblem problem, Share share)
    {
        this.problem = problem;
        left = [.. share.Boards];
        longest =
        [
            .. problem.Lanes.Select(
                (lanes, b) =>
                    left[b] == 0
                        ? []
                        : Enumerable
                            .Range(0, problem.Classes.Length)
                            .Select(c => lanes.StretchLengths(c).DefaultIfEmpty(0).Max())
                            .ToArray()
            ),
        ];
    }

    /// <summary>Of the boards left that can take it, the one that gives most area for its cost, taken from them; null where there is none.</summary>
    public int? Next(int thing, double lengthMm)
    {
        bool[][] serving =
        [
            .. Enumerable
                .Range(0, problem.Sorts)
                .Select(s =>
                    Enumerable
                        .Range(0, problem.Classes.Length)
                        .Select(c => problem.Serves(problem.Kind(c, s), thing))
                        .ToArray()
                ),
        ];
        string[] names = [.. serving.Select(Name)];
        int? best = null;
        double dearest = 0;
        for (int b = 0; b < left.Length; b++)
        {
            int sort = problem.Boards[b].Sort;
            if (left[b] == 0 || !Holds(longest[b], serving[sort], lengthMm))
            {
                continue;
            }

            if (!yields.TryGetValue((b, names[sort]), out double yield))
            {
                yield =
                    problem
                        .Lanes[b]
                        .Best((c, l) => serving[sort][c] ? problem.Classes[c].HeightMm * l : 0)
                        .Value / problem.Boards[b].Cost;
                yields.Add((b, names[sort]), yield);
            }

            if (best is null || yield > dearest)
            {
                (best, dearest) = (b, yield);
            }
        }

        if (best is { } found)
        {
            left[found]--;
        }

        return best;
    }

    /// <summary>The board ripped for as many lanes as take the thing, and with one at least.</summary>
    public Ripping Ripped(int board, int thing, double lengthMm)
    {
        int sort = problem.Boards[board].Sort;
        bool[] serving =
        [
            .. Enumerable
                .Range(0, problem.Classes.Length)
                .Select(c => problem.Serves(problem.Kind(c, sort), thing)),
        ];
        // Things that may lie in the same stretches have it ripped alike.
        string key =
            Name(serving)
            + string.Concat(
                Enumerable
                    .Range(0, serving.Length)
                    .SelectMany(c => problem.Lanes[board].StretchLengths(c))
                    .Select(l => l >= lengthMm ? '1' : '0')
            );
        if (!ripped.TryGetValue((board, key), out Ripping? its))
        {
            its = problem
                .Lanes[board]
                .Best(
                    (c, l) =>
                        serving[c] ? (l >= lengthMm ? 1e3 : 1) * problem.Classes[c].HeightMm * l : 0
                );
            ripped.Add((board, key), its);
        }

        return its;
    }

    private static bool Holds(double[] longest, bool[] serving, double lengthMm)
    {
        for (int c = 0; c < serving.Length; c++)
        {
            if (serving[c] && longest[c] >= lengthMm - 1e-7)
            {
                return true;
            }
        }

        return false;
    }

    private static string Name(bool[] serving) =>
        string.Concat(serving.Select(yes => yes ? '1' : '0'));
}
