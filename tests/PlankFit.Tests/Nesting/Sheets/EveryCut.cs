using PlankFit.Tests.Nesting.Sheets.Guillotine;

namespace PlankFit.Tests.Nesting.Sheets;

/// <summary>The best way to cut a small sheet, by trying every cut at every whole millimetre and every share of the copies: for whole lengths and kerfs.</summary>
internal sealed class EveryCut(IReadOnlyList<SheetItem> items, int kerf)
{
    private readonly Dictionary<(int, int, int), double> known = [];

    public double Best(int length, int width)
    {
        int all = 0;
        for (int k = items.Count - 1; k >= 0; k--)
        {
            all = (all * 4) + items[k].Most!.Value;
        }

        return Best(length, width, all);
    }

    /// <summary>At most three copies of an item, two bits each.</summary>
    private double Best(int length, int width, int copies)
    {
        if (length <= 0 || width <= 0 || copies == 0)
        {
            return 0;
        }

        if (known.TryGetValue((length, width, copies), out double best))
        {
            return best;
        }

        for (int k = 0; k < items.Count; k++)
        {
            if (
                ((copies >> (2 * k)) & 3) > 0
                && items[k].LengthMm <= length
                && items[k].WidthMm <= width
            )
            {
                best = Math.Max(best, items[k].Value);
            }
        }

        foreach (int part in Parts(copies))
        {
            for (int at = 1; at < length; at++)
            {
                best = Math.Max(
                    best,
                    Best(at, width, part) + Best(length - at - kerf, width, copies - part)
                );
            }

            for (int at = 1; at < width; at++)
            {
                best = Math.Max(
                    best,
                    Best(length, at, part) + Best(length, width - at - kerf, copies - part)
                );
            }
        }

        known[(length, width, copies)] = best;
        return best;
    }

    /// <summary>Every choice of some of the copies, but none and all.</summary>
    private static IEnumerable<int> Parts(int copies)
    {
        for (int part = 1; part < copies; part++)
        {
            bool within = true;
            for (int shift = 0; copies >> shift > 0; shift += 2)
            {
                within &= ((part >> shift) & 3) <= ((copies >> shift) & 3);
            }

            if (within)
            {
                yield return part;
            }
        }
    }

    public static double AnyNumber(IReadOnlyList<SheetItem> items, int kerf, int length, int width)
    {
        double[,] best = new double[length + 1, width + 1];
        for (int l = 1; l <= length; l++)
        {
            for (int w = 1; w <= width; w++)
            {
                double most = items
                    .Where(i => i.LengthMm <= l && i.WidthMm <= w)
                    .Select(i => i.Value)
                    .DefaultIfEmpty(0)
                    .Max();
                for (int at = 1; at < l; at++)
                {
                    most = Math.Max(most, best[at, w] + best[Math.Max(0, l - at - kerf), w]);
                }

                for (int at = 1; at < w; at++)
                {
                    most = Math.Max(most, best[l, at] + best[l, Math.Max(0, w - at - kerf)]);
                }

                best[l, w] = most;
            }
        }

        return best[length, width];
    }
}
