using System.Collections.Immutable;
using PlankFit.Nesting.Effort;
using PlankFit.Nesting.Mix;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Rows;

namespace PlankFit.Nesting.Search;

/// <summary>A plan at once, to begin with: the longest first, each into the first strip where a row with it still fits.</summary>
internal static class FirstFit
{
    /// <param name="patience">Once it is over no row's things are put in order anew: each goes where its row grows least, and the plan is a whole one all the same.</param>
    public static CuttingPlan Of(NestProblem problem, Share share, RowBook book, Patience patience)
    {
        var open = new List<Strip>();
        var opened = new List<(int Board, Ripping Ripping)>();
        int[] left = [.. share.Boards];
        int[] laid = new int[problem.Items.Length];
        var yields = new Dictionary<(int Board, string Serving), double>();
        IEnumerable<int> wanted =
            from i in Enumerable.Range(0, problem.Items.Length)
            orderby problem.Items[i].HeightMm > 0 ? problem.Ends.SizeMm(i) : 0 descending, i
            from copy in Enumerable.Range(0, share.Items[i])
            select i;
        foreach (int item in wanted)
        {
            // A block goes in place of each of its parts, and once.
            int block = problem.Instead[item];
            int[] these = block < 0 ? [item] : [block];
            if (block >= 0 && problem.Items[block].Parts.Any(p => laid[p] == share.Items[p]))
            {
                continue;
            }

            bool quick = patience.IsOver;
            Strip? into = open.FirstOrDefault(s => s.Takes(problem, book, these, quick));
            if (into is null)
            {
                if (NewBoard(problem, book, these, left, yields) is not { } board)
                {
                    continue;
                }

                left[board]--;
                Ripping ripping = ForItem(problem, book, board, these);
                foreach ((RippedLane lane, int l) in ripping.Lanes.Select((x, l) => (x, l)))
                {
                    int kind = problem.Kind(lane.Class, problem.Boards[board].Sort);
                    open.AddRange(
                        lane.Stretches.Select(
                            (s, i) => new Strip(opened.Count, kind, l, i, s.LengthMm)
                        )
                    );
                }

                opened.Add((board, ripping));
                into = open.FirstOrDefault(s => s.Takes(problem, book, these, quick));
            }

            into?.Add(problem, book, these, quick);
            foreach (int part in problem.Items[these[0]].Parts)
            {
                laid[part]++;
            }
        }

        return new([
            .. opened
                .Select(
                    (b, i) =>
                        new CuttingPlanBoard(
                            b.Board,
                            b.Ripping,
                            [
                                .. open.Where(s => s.Board == i && s.Row is not null)
                                    .Select(s => new LaneRow(s.Lane, s.Stretch, s.Row!)),
                            ]
                        )
                )
                .Where(b => !b.Rows.IsEmpty),
        ]);
    }

    /// <summary>Of the boards left that can take it, the one that gives most area for its cost.</summary>
    /// <param name="yields">Worked before, by board and by which of its lanes serve: of many things few differ in that, and a whole plan is made however little time there is.</param>
    private static int? NewBoard(
        NestProblem problem,
        RowBook book,
        int[] these,
        int[] left,
        Dictionary<(int Board, string Serving), double> yields
    )
    {
        double length = book.Of(these).LengthMm;
        int? best = null;
        double dearest = 0;
        for (int b = 0; b < left.Length; b++)
        {
            if (left[b] == 0 || !Holds(problem, b, these, length))
            {
                continue;
            }

            string serving = string.Concat(
                Enumerable
                    .Range(0, problem.Classes.Length)
                    .Select(c => Counts(problem, b, c, these) > 0 ? '1' : '0')
            );
            if (!yields.TryGetValue((b, serving), out double yield))
            {
                yield =
                    problem
                        .Lanes[b]
                        .Best(
                            (c, l) => (serving[c] == '1' ? 1 : 0) * problem.Classes[c].HeightMm * l
                        )
                        .Value / problem.Boards[b].Cost;
                yields.Add((b, serving), yield);
            }

            if (best is null || yield > dearest)
            {
                (best, dearest) = (b, yield);
            }
        }

        return best;
    }

    /// <summary>The board ripped for as many lanes as take the thing, and with one at least.</summary>
    private static Ripping ForItem(NestProblem problem, RowBook book, int board, int[] these)
    {
        double length = book.Of(these).LengthMm;
        return problem
            .Lanes[board]
            .Best(
                (c, l) =>
                    Counts(problem, board, c, these)
                    * (l >= length ? 1e3 : 1)
                    * problem.Classes[c].HeightMm
                    * l
            );
    }

    private static int Counts(NestProblem problem, int board, int laneClass, int[] these) =>
        these.All(i => problem.Serves(problem.Kind(laneClass, problem.Boards[board].Sort), i))
            ? 1
            : 0;

    private static bool Holds(NestProblem problem, int board, int[] these, double length) =>
        Enumerable
            .Range(0, problem.Classes.Length)
            .Any(c =>
                Counts(problem, board, c, these) > 0
                && problem.Lanes[board].StretchLengths(c).Any(l => l >= length - 1e-7)
            );

    private sealed class Strip(int board, int kind, int lane, int stretch, double lengthMm)
    {
        public int Board => board;

        public int Lane => lane;

        public int Stretch => stretch;

        public Row? Row { get; private set; }

        public bool Takes(NestProblem problem, RowBook book, int[] these, bool quick)
        {
            if (!these.All(i => problem.Serves(kind, i)))
            {
                return false;
            }

            int[] with = Row is null ? these : [.. Row.Items, .. these];
            return RowOrder.Least(problem.Ends, with) <= lengthMm
                && Grown(problem, book, these, quick).LengthMm <= lengthMm + 1e-7;
        }

        public void Add(NestProblem problem, RowBook book, int[] these, bool quick) =>
            Row = Grown(problem, book, these, quick);

        private Row Grown(NestProblem problem, RowBook book, int[] these, bool quick) =>
            Row is null ? book.Of(these)
            : quick ? RowOrder.With(problem.Ends, Row, these[0])
            : book.With(Row, these[0]);
    }
}
