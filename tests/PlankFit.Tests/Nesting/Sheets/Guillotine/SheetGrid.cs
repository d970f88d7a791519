using System.Collections.Immutable;

namespace PlankFit.Tests.Nesting.Sheets.Guillotine;

/// <summary>
/// A sheet and its items in whole units, a kerf added to each, and the only places where cuts need to be: sums of items' sizes ("normal patterns",
/// Herz 1972; Christofides and Whitlock 1977; both from memory).
/// </summary>
internal sealed class SheetGrid
{
    private SheetGrid(long[] x, long[] y, ImmutableArray<GridItem> items)
    {
        X = x;
        Y = y;
        Items = items;
        RestX = Rest(x);
        RestY = Rest(y);
    }

    /// <summary>From nought to the sheet's length.</summary>
    public long[] X { get; }

    /// <summary>From nought to the sheet's width.</summary>
    public long[] Y { get; }

    /// <summary>Only those that fit and are worth something.</summary>
    public ImmutableArray<GridItem> Items { get; }

    /// <summary>At [i * X.Length + a], a no more than i: the last place no further than X[i] − X[a].</summary>
    public int[] RestX { get; }

    public int[] RestY { get; }

    /// <summary>Steps that one table over all places takes.</summary>
    public long Steps => (long)X.Length * Y.Length * (X.Length + Y.Length) / 2;

    public bool HasLimits => Items.Any(i => i.Most < (X[^1] / i.Length) * (Y[^1] / i.Width));

    /// <summary>In millionths of a millimetre: no length that is told in mm or in 64ths of an inch is rounded. Null where there would be more places than may be.</summary>
    public static SheetGrid? Exact(
        double lengthMm,
        double widthMm,
        ImmutableArray<SheetItem> items,
        double kerfMm,
        int mostPlaces
    ) => Of(lengthMm, widthMm, items, kerfMm, 1e-6, 1e-6, true, mostPlaces);

    /// <summary>In as many steps as there may be places; sizes rounded up for a plan that can be sawn, or down for a bound on all plans.</summary>
    public static SheetGrid Coarse(
        double lengthMm,
        double widthMm,
        ImmutableArray<SheetItem> items,
        double kerfMm,
        bool up,
        int mostPlaces
    ) =>
        Of(
            lengthMm,
            widthMm,
            items,
            kerfMm,
            (lengthMm + kerfMm) / (mostPlaces - 2),
            (widthMm + kerfMm) / (mostPlaces - 2),
            up,
            int.MaxValue
        )!;

    private static SheetGrid? Of(
        double lengthMm,
        double widthMm,
        ImmutableArray<SheetItem> items,
        double kerfMm,
        double stepX,
        double stepY,
        bool up,
        int mostPlaces
    )
    {
        // A sum of doubles may be a little out; a thousandth of a unit is more than that and less than any saw's.
        const double Fudge = 1e-3;
        long Cells(double mm, double step, bool ceiling) =>
            ceiling
                ? (long)Math.Ceiling((mm / step) - Fudge)
                : (long)Math.Floor((mm / step) + Fudge);
        long length = Cells(lengthMm + kerfMm, stepX, false),
            width = Cells(widthMm + kerfMm, stepY, false);
        ImmutableArray<GridItem> fitting =
        [
            .. items
                .Select(
                    (item, i) =>
                        (
                            Item: item,
                            Grid: new GridItem(
                                i,
                                Math.Max(1, Cells(item.LengthMm + kerfMm, stepX, up)),
                                Math.Max(1, Cells(item.WidthMm + kerfMm, stepY, up)),
                                item.Value,
                                item.Most ?? int.MaxValue
                            )
                        )
                )
                .Where(i =>
                    i.Item.Value > 0
                    && i.Grid.Most > 0
                    && i.Item.LengthMm <= lengthMm + 1e-9
                    && i.Item.WidthMm <= widthMm + 1e-9
                    && i.Grid.Length <= length
                    && i.Grid.Width <= width
                )
                .Select(i =>
                    i.Grid with
                    {
                        Most = (int)
                            Math.Min(
                                i.Grid.Most,
                                (length / i.Grid.Length) * (width / i.Grid.Width)
                            ),
                    }
                ),
        ];
        return
            Sums(fitting.Select(i => (i.Length, i.Most)), length, mostPlaces) is { } x
            && Sums(fitting.Select(i => (i.Width, i.Most)), width, mostPlaces) is { } y
            ? new(x, y, fitting)
            : null;
    }

    /// <summary>Every sum of sizes up to a limit, nought and the limit with them; null where there are more than may be.</summary>
    private static long[]? Sums(
        IEnumerable<(long Size, int Most)> sizes,
        long limit,
        int mostPlaces
    )
    {
        var sums = new HashSet<long> { 0, limit };
        foreach (
            IGrouping<long, (long Size, int Most)>? same in sizes
                .GroupBy(s => s.Size)
                .OrderByDescending(g => g.Key)
        )
        {
            long copies = Math.Min(limit / same.Key, same.Sum(s => (long)s.Most));
            long[] before = [.. sums];
            foreach (long sum in before)
            {
                for (long c = 1; c <= copies && sum + (c * same.Key) <= limit; c++)
                {
                    sums.Add(sum + (c * same.Key));
                }
            }

            if (sums.Count > mostPlaces)
            {
                return null;
            }
        }

        return [.. sums.Order()];
    }

    private static int[] Rest(long[] at)
    {
        int n = at.Length;
        int[] rest = new int[n * n];
        for (int i = 0; i < n; i++)
        {
            int r = i;
            for (int a = 0; a <= i; a++)
            {
                while (at[r] > at[i] - at[a])
                {
                    r--;
                }

                rest[(i * n) + a] = r;
            }
        }

        return rest;
    }
}

/// <param name="Index">In the list asked for.</param>
/// <param name="Length">In the grid's units, kerf and all.</param>
/// <param name="Most">No more than the sheet holds.</param>
internal readonly record struct GridItem(
    int Index,
    long Length,
    long Width,
    double Value,
    int Most
);
