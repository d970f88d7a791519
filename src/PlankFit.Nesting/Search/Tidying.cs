using PlankFit.Nesting.Mix;
using PlankFit.Nesting.Rows;

namespace PlankFit.Nesting.Search;

/// <summary>
/// Among plans that count the same the one that leaves most in one piece: out of the strip that has the largest free end things go into what other strips have free,
/// or change places with smaller ones there. A board that is emptied so is not cut into.
/// </summary>
internal static class Tidying
{
    private const double FitsMm = 1e-7;

    /// <summary>What is gained by less is not worth a change, mm.</summary>
    private const double WorthMm = 1;

    /// <summary>So many rows are tried: some tenths of a second, and it ends in the same place on any machine.</summary>
    private const int Tries = 3000;

    public static CuttingPlan Of(NestProblem problem, CuttingPlan plan, RowBook book)
    {
        if (plan.Boards.IsEmpty)
        {
            return plan;
        }

        List<Strip> strips =
        [
            .. plan.Boards.SelectMany(
                (b, i) =>
                    b.Rows.Select(r => new Strip(
                        i,
                        problem.Kind(b.Ripping.Lanes[r.Lane].Class, problem.Boards[b.Board].Sort),
                        b.Ripping.Lanes[r.Lane].Stretches[r.Stretch].LengthMm,
                        r
                    ))
            ),
        ];
        int tries = Tries;
        // The largest first; another where nothing can be got out of it is left as it is.
        Strip giving = strips.MaxBy(s => s.FreeMm * s.HeightMm)!;
        while (
            giving.Row is not null && tries > 0 && Gives(problem, strips, giving, book, ref tries)
        ) { }

        return new([
            .. plan
                .Boards.Select(
                    (b, i) =>
                        b with
                        {
                            Rows =
                            [
                                .. strips
                                    .Where(s => s.Board == i && s.Row is not null)
                                    .Select(s => s.Laid with { Row = s.Row! }),
                            ],
                        }
                )
                .Where(b => !b.Rows.IsEmpty),
        ]);
    }

    /// <summary>One thing less in a strip, or a smaller one for it.</summary>
    private static bool Gives(
        NestProblem problem,
        List<Strip> strips,
        Strip giving,
        RowBook book,
        ref int tries
    )
    {
        Row row = giving.Row!;
        foreach (int item in row.Items.OrderByDescending(problem.Ends.SizeMm))
        {
            int[] rest = Less(row, item);
            foreach (
                Strip other in strips.Where(s =>
                    s != giving && s.Row is not null && problem.Serves(s.Kind, item)
                )
            )
            {
                double size = problem.Ends.SizeMm(item);
                // Its own room first; then a thing of the other's that is smaller, for it.
                foreach (
                    int? back in other.Row!.Items.Distinct().Select(i => (int?)i).Prepend(null)
                )
                {
                    double smaller = back is { } b ? problem.Ends.SizeMm(b) : 0;
                    if (
                        smaller > size - WorthMm
                        || size - smaller > other.FreeMm + Slack(problem, other, item)
                        || (back is { } its && !problem.Serves(giving.Kind, its))
                    )
                    {
                        continue;
                    }

                    if (tries-- <= 0)
                    {
                        return false;
                    }

                    Row? ours =
                        back is { } comes ? book.Of([.. rest, comes])
                        : rest.Length > 0 ? book.InOrder(row, rest)
                        : null;
                    Row theirs = book.Of([
                        .. back is { } goes ? Less(other.Row, goes) : [.. other.Row.Items],
                        item,
                    ]);
                    if (
                        theirs.LengthMm <= other.LengthMm + FitsMm
                        && (ours?.LengthMm ?? 0) <= row.LengthMm - WorthMm
                    )
                    {
                        (giving.Row, other.Row) = (ours, theirs);
                        return true;
                    }
                }
            }
        }

        return false;
    }

    /// <summary>What a row may shrink by when its ends change, at the most.</summary>
    private static double Slack(NestProblem problem, Strip strip, int item) =>
        strip.Row!.LengthMm
        - RowOrder.Least(problem.Ends, strip.Row.Items)
        + Math.Abs(problem.Ends.AtRowEndMm(item, 0))
        + Math.Abs(problem.Ends.AtRowEndMm(item, 1));

    private static int[] Less(Row row, int item)
    {
        var left = row.Items.ToList();
        left.Remove(item);
        return [.. left];
    }

    /// <summary>A clear stretch of a lane and the row in it.</summary>
    private sealed class Strip(int board, int kind, double lengthMm, LaneRow laid)
    {
        public int Board => board;

        public int Kind => kind;

        public double LengthMm => lengthMm;

        public LaneRow Laid => laid;

        public Row? Row { get; set; } = laid.Row;

        public double HeightMm => laid.Row.HeightMm;

        public double FreeMm => lengthMm - (Row?.LengthMm ?? 0);
    }
}
