namespace PlankFit.Tests.Nesting.Sheets.Guillotine;

/// <summary>Ways to cut that keep to the copies wanted, made from ways that do not.</summary>
internal static class SheetFill
{
    /// <summary>The way of a table of values, its surplus copies taken out again and every rectangle that is free filled with what is still wanted.</summary>
    /// <param name="order">Of the grid's items: which is tried first in a free rectangle.</param>
    public static SheetPart? Mended(SheetGrid grid, SheetValues values, int[] order)
    {
        int[] left = [.. grid.Items.Select(i => i.Most)];
        var kept = new List<bool>();
        values.Way(
            grid.X.Length - 1,
            grid.Y.Length - 1,
            (_, _, k) =>
            {
                kept.Add(k >= 0 && left[k] > 0);
                if (kept[^1])
                {
                    left[k]--;
                }

                return null;
            }
        );
        int leaf = 0;
        return values.Way(
            grid.X.Length - 1,
            grid.Y.Length - 1,
            (i, j, k) =>
                kept[leaf++]
                    ? Around(grid, order, left, grid.X[i], grid.Y[j], k)
                    : Fill(grid, order, left, grid.X[i], grid.Y[j])
        );
    }

    /// <summary>The first item that is wanted and fits goes into the corner, and so on in what is left beside and above it.</summary>
    /// <param name="left">How many of each are still wanted; less afterwards.</param>
    public static SheetPart? Fill(SheetGrid grid, int[] order, int[] left, long length, long width)
    {
        foreach (int k in order)
        {
            if (left[k] > 0 && grid.Items[k].Length <= length && grid.Items[k].Width <= width)
            {
                left[k]--;
                return Around(grid, order, left, length, width, k);
            }
        }

        return null;
    }

    private static SheetPart? Around(
        SheetGrid grid,
        int[] order,
        int[] left,
        long length,
        long width,
        int k
    )
    {
        GridItem item = grid.Items[k];
        long beside = length - item.Length,
            above = width - item.Width;
        var part = SheetPart.Of(item.Index);
        // The larger of the two rectangles that are left stays whole.
        if (beside * width > above * length)
        {
            SheetPart? end = Fill(grid, order, left, beside, width),
                top = Fill(grid, order, left, item.Length, above);
            return SheetPart.Join(SheetPart.Join(part, top, beside: false), end, beside: true);
        }
        else
        {
            SheetPart? top = Fill(grid, order, left, length, above),
                end = Fill(grid, order, left, beside, item.Width);
            return SheetPart.Join(SheetPart.Join(part, end, beside: true), top, beside: false);
        }
    }
}
