using System.Collections.Immutable;

namespace PlankFit.Tests.Nesting.Sheets.Guillotine;

/// <summary>
/// A price on every copy of an item that is wanted a limited number of times: with it, the table for any number of copies bounds what the sheet is worth, the more
/// tightly the better the prices. They are found by subgradients (Held, Wolfe and Crowder 1974, from memory).
/// </summary>
/// <param name="PerCopy">By item of the grid, nought or more.</param>
/// <param name="Bound">No way to cut the sheet is worth more.</param>
/// <param name="Values">The table at these prices.</param>
/// <param name="Best">The best way met on the way there, or null.</param>
internal sealed record SheetPrices(
    double[] PerCopy,
    double Bound,
    SheetValues Values,
    SheetPart? Best,
    double BestValue
)
{
    /// <param name="rounds">The most prices that are tried.</param>
    public static SheetPrices Find(
        SheetGrid grid,
        ImmutableArray<SheetItem> items,
        int rounds,
        CancellationToken enough
    )
    {
        int n = grid.Items.Length;
        int[][] orders =
        [
            [.. Enumerable.Range(0, n).OrderByDescending(k => grid.Items[k].Value)],
            [
                .. Enumerable
                    .Range(0, n)
                    .OrderByDescending(k =>
                        grid.Items[k].Value / ((double)grid.Items[k].Length * grid.Items[k].Width)
                    ),
            ],
        ];
        double[] prices = new double[n];
        SheetPrices? found = null;
        SheetPart? best = null;
        double bestValue = 0,
            scale = 1.5;
        int stale = 0;
        for (int round = 0; round < Math.Max(1, rounds); round++)
        {
            var values = new SheetValues(
                grid,
                [.. grid.Items.Select((i, k) => i.Value - prices[k])]
            );
            double bound = values.Whole + grid.Items.Select((i, k) => prices[k] * i.Most).Sum();
            int[] surplus = [.. grid.Items.Select(i => -i.Most)];
            values.Way(
                grid.X.Length - 1,
                grid.Y.Length - 1,
                (_, _, k) =>
                {
                    if (k >= 0)
                    {
                        surplus[k]++;
                    }

                    return null;
                }
            );
            foreach (int[] order in orders)
            {
                SheetPart? mended = SheetFill.Mended(grid, values, order);
                if (mended is not null && mended.Value(items) > bestValue)
                {
                    (best, bestValue) = (mended, mended.Value(items));
                }
            }

            if (found is null || bound < found.Bound)
            {
                stale =
                    bound < (found?.Bound ?? double.PositiveInfinity) * (1 - 1e-4) ? 0 : stale + 1;
                found = new(prices, bound, values, null, 0);
            }
            else
            {
                stale++;
            }

            if (stale >= 5)
            {
                (scale, stale) = (scale / 2, 0);
            }

            double steepness = 0;
            for (int k = 0; k < n; k++)
            {
                // A price of nought does not fall.
                steepness += surplus[k] > 0 || prices[k] > 0 ? (double)surplus[k] * surplus[k] : 0;
            }

            if (
                steepness == 0
                || found.Bound <= bestValue * (1 + 1e-12)
                || scale < 1e-3
                || enough.IsCancellationRequested
            )
            {
                break;
            }

            double step = scale * (bound - bestValue) / steepness;
            prices = [.. prices.Select((p, k) => Math.Max(0, p + (step * surplus[k])))];
        }

        return found! with
        {
            Best = best,
            BestValue = bestValue,
        };
    }
}
