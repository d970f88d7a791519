using System.Collections.Immutable;

namespace PlankFit.Tests.Nesting.Sheets.Guillotine;

/// <summary>Rectangles joined edge to edge, without places: one item, or two parts beside each other along the sheet's length, or one above the other across it.</summary>
internal sealed record SheetPart(int Item, bool Beside, SheetPart? First, SheetPart? Second)
{
    public static SheetPart Of(int item) => new(item, false, null, null);

    /// <summary>Either may be null, for nothing.</summary>
    public static SheetPart? Join(SheetPart? first, SheetPart? second, bool beside) =>
        first is null ? second
        : second is null ? first
        : new(-1, beside, first, second);

    public double Value(ImmutableArray<SheetItem> items) =>
        First is null ? items[Item].Value : First.Value(items) + Second!.Value(items);

    public void Count(int[] counts)
    {
        if (First is null)
        {
            counts[Item]++;
            return;
        }

        First.Count(counts);
        Second!.Count(counts);
    }

    /// <summary>Laid into a box that holds it, in the lengths asked for and not in those of any grid.</summary>
    public SheetNode Lay(ImmutableArray<SheetItem> items, double kerfMm, SheetBox box)
    {
        if (First is null)
        {
            return new(box, Item, false, 0, null, null);
        }

        (double length, double width) = First.Size(items, kerfMm);
        double at = Beside ? box.X + length : box.Y + width;
        SheetBox first = Beside ? box with { LengthMm = length } : box with { WidthMm = width },
            second = Beside
                ? box with
                {
                    X = at + kerfMm,
                    LengthMm = box.LengthMm - length - kerfMm,
                }
                : box with
                {
                    Y = at + kerfMm,
                    WidthMm = box.WidthMm - width - kerfMm,
                };
        return new(
            box,
            null,
            Beside,
            at,
            First.Lay(items, kerfMm, first),
            Second!.Lay(items, kerfMm, second)
        );
    }

    private (double Length, double Width) Size(ImmutableArray<SheetItem> items, double kerfMm)
    {
        if (First is null)
        {
            return (items[Item].LengthMm, items[Item].WidthMm);
        }

        (double l1, double w1) = First.Size(items, kerfMm);
        (double l2, double w2) = Second!.Size(items, kerfMm);
        return Beside ? (l1 + kerfMm + l2, Math.Max(w1, w2)) : (Math.Max(l1, l2), w1 + kerfMm + w2);
    }
}
