using System.Collections.Immutable;

namespace PlankFit.Tests.Nesting.Sheets.Guillotine;

/// <summary>
/// The best way to cut a sheet into no more copies than are wanted: rectangles are joined two by two (Wang 1983, from memory), the most promising first, what a rectangle can be
/// worth in the whole sheet being bounded by the table for any number of copies (Viswanathan and Bagchi 1993, from memory), with and without prices on copies.
/// </summary>
internal sealed class BuildSearch
{
    private readonly SheetGrid grid;
    private readonly ImmutableArray<SheetItem> items;
    private readonly double[] prices;
    private readonly double[] around;
    private readonly double[] pricedAround;
    private readonly double allPrices;
    private readonly int[] order;
    private readonly List<SheetBuild> closed = [];
    private readonly PriorityQueue<SheetBuild, (double, double, int)> open = new();
    private readonly Dictionary<string, List<SheetBuild>> sameCopies = [];
    private long effort;
    private int made;

    /// <summary>A rectangle that is taken up costs as much as so many pairs that are not.</summary>
    private const int StepsOfOffer = 50;

    private BuildSearch(
        SheetGrid grid,
        ImmutableArray<SheetItem> items,
        SheetValues unpriced,
        SheetPrices found,
        long effort
    )
    {
        this.effort = effort;
        this.grid = grid;
        this.items = items;
        prices = found.PerCopy;
        around = unpriced.Around();
        pricedAround = found.Values.Around();
        allPrices = grid.Items.Select((i, k) => prices[k] * i.Most).Sum();
        order = [.. Enumerable.Range(0, prices.Length).OrderByDescending(k => grid.Items[k].Value)];
        Best = found.Best;
        BestValue = found.BestValue;
    }

    private SheetPart? Best { get; set; }

    private double BestValue { get; set; }

    /// <param name="unpriced">The table at the items' own values.</param>
    /// <param name="found">Prices, and a way to begin with.</param>
    /// <param name="effort">Pairs that are tried, those that are joined counted more.</param>
    /// <returns>The best way, its value, and what no way exceeds.</returns>
    public static (SheetPart? Best, double Value, double Bound) Run(
        SheetGrid grid,
        ImmutableArray<SheetItem> items,
        SheetValues unpriced,
        SheetPrices found,
        long effort,
        CancellationToken enough
    )
    {
        var search = new BuildSearch(grid, items, unpriced, found, effort);
        double bound = search.Go(enough);
        return (search.Best, search.BestValue, bound);
    }

    private double Go(CancellationToken enough)
    {
        for (int k = 0; k < grid.Items.Length; k++)
        {
            GridItem item = grid.Items[k];
            ushort[] copies = new ushort[grid.Items.Length];
            copies[k] = 1;
            Offer(SheetPart.Of(item.Index), item.Length, item.Width, copies, item.Value, prices[k]);
        }

        while (open.TryDequeue(out SheetBuild? next, out _))
        {
            if (!Promises(next.Bound))
            {
                break;
            }

            closed.Add(next);
            FillUp(next);
            foreach (SheetBuild other in closed)
            {
                if (effort-- <= 0 || enough.IsCancellationRequested)
                {
                    // What is still open promises no more than the one that was looked at last.
                    return Math.Max(BestValue, next.Bound);
                }

                if (next.Length + other.Length <= grid.X[^1])
                {
                    Join(next, other, beside: true);
                }

                if (next.Width + other.Width <= grid.Y[^1])
                {
                    Join(next, other, beside: false);
                }
            }
        }

        return BestValue;
    }

    private void Join(SheetBuild a, SheetBuild b, bool beside)
    {
        long length = beside ? a.Length + b.Length : Math.Max(a.Length, b.Length),
            width = beside ? Math.Max(a.Width, b.Width) : a.Width + b.Width;
        double value = a.Value + b.Value,
            price = a.Price + b.Price;
        if (!Promises(Bound(Place(grid.X, length), Place(grid.Y, width), value, price)))
        {
            return;
        }

        if (!a.FitsWith(b, grid))
        {
            return;
        }

        ushort[] copies = new ushort[a.Copies.Length];
        for (int k = 0; k < copies.Length; k++)
        {
            copies[k] = (ushort)(a.Copies[k] + b.Copies[k]);
        }

        Offer(SheetPart.Join(a.Part, b.Part, beside)!, length, width, copies, value, price);
    }

    /// <summary>Takes it up, unless the same copies lie in no more room already.</summary>
    private void Offer(
        SheetPart part,
        long length,
        long width,
        ushort[] copies,
        double value,
        double price
    )
    {
        effort -= StepsOfOffer;
        int i = Place(grid.X, length),
            j = Place(grid.Y, width);
        double bound = Bound(i, j, value, price);
        var build = new SheetBuild(part, i, j, length, width, copies, value, price, bound);
        string key = build.Key;
        if (!sameCopies.TryGetValue(key, out List<SheetBuild>? same))
        {
            sameCopies[key] = same = [];
        }

        if (same.Any(s => s.Length <= length && s.Width <= width))
        {
            return;
        }

        same.Add(build);
        Keep(part, value);
        if (Promises(bound))
        {
            open.Enqueue(build, (-bound, -value, made++));
        }
    }

    /// <summary>What is free beside and above it, filled without much thought: an answer early.</summary>
    private void FillUp(SheetBuild build)
    {
        int[] left = [.. grid.Items.Select((item, k) => item.Most - build.Copies[k])];
        SheetPart? top = SheetFill.Fill(grid, order, left, build.Length, grid.Y[^1] - build.Width),
            end = SheetFill.Fill(grid, order, left, grid.X[^1] - build.Length, grid.Y[^1]);
        SheetPart all = SheetPart.Join(
            SheetPart.Join(build.Part, top, beside: false),
            end,
            beside: true
        )!;
        Keep(all, all.Value(items));
    }

    private void Keep(SheetPart part, double value)
    {
        if (value > BestValue)
        {
            (Best, BestValue) = (part, value);
        }
    }

    private bool Promises(double bound) => bound > BestValue + (1e-9 * Math.Abs(BestValue));

    private double Bound(int i, int j, double value, double price)
    {
        int at = (i * grid.Y.Length) + j;
        return Math.Min(
            value + around[at],
            value + pricedAround[at] + Math.Max(0, allPrices - price)
        );
    }

    private static int Place(long[] places, long at)
    {
        int i = Array.BinarySearch(places, at);
        return i >= 0 ? i : ~i;
    }
}
