using System.Collections.Immutable;

namespace PlankFit.Tests.Nesting.Sheets.Guillotine;

/// <summary>Rectangles out of one sheet by cuts from edge to edge, so that what is got is worth the most.</summary>
public static class GuillotineSheet
{
    /// <summary>A few seconds at the most.</summary>
    public const long UsualEffort = 2_000_000_000;

    /// <summary>Tables of more places than this along a side are not kept.</summary>
    private const int MostPlaces = 2000;

    /// <summary>
    /// Every rectangle keeps its direction in the sheet. Where every item may be cut any number of times, and wherever the search comes to its end, the answer is the best there is;
    /// otherwise it says by how much it may fall short. The same input gives the same answer.
    /// </summary>
    /// <param name="lengthMm">What of the sheet can be used, trimmed; <paramref name="widthMm"/> likewise.</param>
    /// <param name="kerfMm">What the saw takes between two parts; nothing at the sheet's edges.</param>
    /// <param name="effort">Elementary steps, some hundred million a second.</param>
    /// <param name="enough">Ends the search: the best found is returned, never an exception.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length is not positive or not finite, the kerf is less than nought, or a value is not finite.</exception>
    public static SheetCutting Best(
        double lengthMm,
        double widthMm,
        ImmutableArray<SheetItem> items,
        double kerfMm,
        long effort,
        CancellationToken enough
    )
    {
        Check(lengthMm, widthMm, items, kerfMm);
        var exact = SheetGrid.Exact(lengthMm, widthMm, items, kerfMm, MostPlaces);
        if (exact is not null && exact.Steps > effort / 16)
        {
            exact = null;
        }

        SheetGrid grid =
            exact
            ?? SheetGrid.Coarse(lengthMm, widthMm, items, kerfMm, up: true, CoarsePlaces(effort));
        double[] own = [.. grid.Items.Select(i => i.Value)];
        var unpriced = new SheetValues(grid, own);
        SheetPart? best;
        double bound;
        if (!grid.HasLimits)
        {
            best = unpriced.Way(
                grid.X.Length - 1,
                grid.Y.Length - 1,
                (_, _, k) => k < 0 ? null : SheetPart.Of(grid.Items[k].Index)
            );
            bound = unpriced.Whole;
        }
        else
        {
            var found = SheetPrices.Find(grid, items, Rounds(grid, effort), enough);
            (best, double value, bound) =
                found.Bound <= found.BestValue * (1 + 1e-9)
                    ? (found.Best, found.BestValue, found.BestValue)
                    : BuildSearch.Run(grid, items, unpriced, found, effort / 20, enough);
        }

        if (exact is null)
        {
            var outside = SheetGrid.Coarse(
                lengthMm,
                widthMm,
                items,
                kerfMm,
                up: false,
                CoarsePlaces(effort)
            );
            bound = SheetPrices.Find(outside, items, Rounds(outside, effort), enough).Bound;
        }

        return Laid(lengthMm, widthMm, items, kerfMm, best, bound);
    }

    private static SheetCutting Laid(
        double lengthMm,
        double widthMm,
        ImmutableArray<SheetItem> items,
        double kerfMm,
        SheetPart? best,
        double bound
    )
    {
        var sheet = new SheetBox(0, 0, lengthMm, widthMm);
        SheetNode cuts = best?.Lay(items, kerfMm, sheet) ?? new(sheet, null, false, 0, null, null);
        ImmutableArray<SheetPlace> places = [.. Places(items, cuts)];
        double value = places.Sum(p => items[p.Item].Value);
        bool proved = bound <= value + (1e-9 * Math.Abs(value));
        return new(places, cuts, value, proved ? value : bound, proved);
    }

    private static IEnumerable<SheetPlace> Places(
        ImmutableArray<SheetItem> items,
        SheetNode node
    ) =>
        node.Item is { } item
            ?
            [
                new(
                    item,
                    node.Box with
                    {
                        LengthMm = items[item].LengthMm,
                        WidthMm = items[item].WidthMm,
                    }
                ),
            ]
        : node.First is null ? []
        : Places(items, node.First).Concat(Places(items, node.Second!));

    private static int CoarsePlaces(long effort) =>
        Math.Clamp((int)Math.Cbrt(effort / 64.0), 40, MostPlaces);

    private static int Rounds(SheetGrid grid, long effort) =>
        (int)Math.Clamp(effort / 2 / Math.Max(1, grid.Steps), 4, 150);

    private static void Check(
        double lengthMm,
        double widthMm,
        ImmutableArray<SheetItem> items,
        double kerfMm
    )
    {
        Positive(lengthMm, nameof(lengthMm));
        Positive(widthMm, nameof(widthMm));
        if (!(kerfMm >= 0 && double.IsFinite(kerfMm)))
        {
            throw new ArgumentOutOfRangeException(nameof(kerfMm), kerfMm, "not a kerf");
        }

        foreach (SheetItem item in items)
        {
            Positive(item.LengthMm, nameof(items));
            Positive(item.WidthMm, nameof(items));
            if (!double.IsFinite(item.Value))
            {
                throw new ArgumentOutOfRangeException(nameof(items), item.Value, "not a value");
            }
        }
    }

    private static void Positive(double mm, string name)
    {
        if (!(mm > 0 && double.IsFinite(mm)))
        {
            throw new ArgumentOutOfRangeException(name, mm, "not a length");
        }
    }
}
