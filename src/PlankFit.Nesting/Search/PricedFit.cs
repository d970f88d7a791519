using System.Collections.Immutable;
using PlankFit.Nesting.Effort;
using PlankFit.Nesting.Mix;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Rows;

namespace PlankFit.Nesting.Search;

/// <summary>
/// A plan by prices: board after board is taken that yields most for its cost, filled with the dearest rows of what is left; the last few things are mixed whole.
/// </summary>
internal static class PricedFit
{
    /// <summary>So few things are mixed whole.</summary>
    public const int Few = 22;
    private const int Rounds = 14;
    private const double Slack = 0.3;
    private const double Effort = 0.03;

    /// <summary>Of the search for each row; and for a plan in a hurry.</summary>
    public const long Steps = 300_000;
    public const long QuickSteps = 20_000;

    public static CuttingPlan Of(NestLot lot, MasterPrices prices, long steps, Patience patience)
    {
        (NestProblem problem, Share whole, _, _) = lot;
        ImmutableArray<CuttingPlanBoard>.Builder done =
            ImmutableArray.CreateBuilder<CuttingPlanBoard>();
        int[] items = [.. whole.Items],
            boards = [.. whole.Boards];
        using var tables = new RowTables(problem, whole, prices.Items, RowTails.FineMm, patience);
        var rows = new DearRows(problem, prices, tables, steps);
        var queue = new PriorityQueue<int, double>(
            Enumerable
                .Range(0, boards.Length)
                .Where(b => boards[b] > 0)
                .Select(b => (b, double.NegativeInfinity))
        );
        // What a board yields only falls as things are taken: one that still leads when it is worked anew is the best.
        while (items.Sum() > Few && queue.Count > 0 && !patience.IsOver)
        {
            int b = queue.Dequeue();
            (CuttingPlanBoard cut, double yield) = rows.Fill(b, items);
            if (cut.Rows.IsEmpty)
            {
                continue;
            }

            if (queue.Count > 0 && queue.TryPeek(out _, out double next) && -yield > next)
            {
                queue.Enqueue(b, -yield);
                continue;
            }

            done.Add(cut);
            foreach (int i in cut.Rows.SelectMany(r => r.Row.Parts))
            {
                items[i]--;
            }

            if (--boards[b] > 0)
            {
                queue.Enqueue(b, -yield);
            }
        }

        var share = new Share([.. items], [.. boards]);
        return new([.. done, .. Rest(lot with { Share = share }, prices, patience).Boards]);
    }

    /// <summary>What is left, in what boards are left: the first that fits, and better where the solver finds it.</summary>
    public static CuttingPlan Rest(NestLot lot, MasterPrices prices, Patience patience)
    {
        (NestProblem problem, Share share, double[] missing, RowBook book) = lot;
        CuttingPlan rest = FirstFit.Of(problem, share, book, patience);
        if (share.Items.All(n => n == 0) || share.Items.Sum() > Few || patience.IsOver)
        {
            return rest;
        }

        double value = rest.Value(problem, share, missing);
        ColumnResult columns = ColumnSearch.Run(
            problem,
            share,
            missing,
            new(rest.Rows, prices, share, Rounds, value, Slack, OnlyMix: true),
            patience
        );
        return WholeMix.Of(lot, columns.Mix, value, Effort, patience) ?? rest;
    }

    /// <summary>The dearest rows of every kind of strip, of whatever is left.</summary>
    private sealed class DearRows(
        NestProblem problem,
        MasterPrices prices,
        RowTables tables,
        long steps
    )
    {
        public (CuttingPlanBoard Cut, double Yield) Fill(int board, int[] items)
        {
            BoardType type = problem.Boards[board];
            Ripping ripping = problem
                .Lanes[board]
                .Best(
                    (c, length) =>
                    {
                        int kind = problem.Kind(c, type.Sort);
                        return prices.Strips[kind][problem.Bucket(kind, length)];
                    }
                );
            if (ripping.Lanes.IsEmpty)
            {
                ripping = problem
                    .Lanes[board]
                    .Best((c, length) => problem.Classes[c].HeightMm * length);
            }

            int[] left = [.. items];
            ImmutableArray<LaneRow>.Builder laid = ImmutableArray.CreateBuilder<LaneRow>();
            double worth = 0;
            for (int l = 0; l < ripping.Lanes.Length; l++)
            {
                RippedLane lane = ripping.Lanes[l];
                int kind = problem.Kind(lane.Class, type.Sort);
                if (!tables.Values(kind).IsWhole)
                {
                    continue;
                }

                _ = tables.Tails(kind);
                for (int s = 0; s < lane.Stretches.Length; s++)
                {
                    (List<Row> found, _, _) = tables
                        .Search(kind, left)
                        .Find(lane.Stretches[s].LengthMm, 0, steps);
                    if (found.Count > 0)
                    {
                        laid.Add(new(l, s, found[0]));
                        foreach (int i in found[0].Parts)
                        {
                            left[i]--;
                            worth += prices.Items[i];
                        }
                    }
                }
            }

            return (new(board, ripping, laid.ToImmutable()), worth / type.Cost);
        }
    }
}
