using PlankFit.Planking.Whole;

namespace PlankFit.Export.Sheets;

/// <summary>Lists one under the other, each after the first under its own name, as many on a page as it holds whole; one that is longer has pages of its own.</summary>
internal static class ListsTogether
{
    /// <summary>From one list to the first line of the next, its name between them.</summary>
    private const double UnderMm = 14;

    /// <summary>Of these below the line that the name stands on.</summary>
    private const double NameMm = 3;

    public static IReadOnlyList<SheetPage> Pages(Job job, IReadOnlyList<ListSheet> lists)
    {
        var format = SheetFormat.Bench(job);
        Box inside = Frame.Inside(format).Within(3);
        List<SheetPage> pages = [];
        List<ListSheet> page = [];
        double room = inside.Height;
        foreach (ListSheet list in lists)
        {
            ListSheet fitted = list.Fitted(inside);
            double taken = fitted.HeightMm(inside) + (page.Count > 0 ? UnderMm : 0);
            if (taken > room && page.Count > 0)
            {
                pages.AddRange(On(job, format, [.. page]));
                page.Clear();
                (room, taken) = (inside.Height, fitted.HeightMm(inside));
            }

            page.Add(fitted);
            room -= taken;
        }

        return [.. pages, .. page.Count > 0 ? On(job, format, [.. page]) : []];
    }

    private static IReadOnlyList<SheetPage> On(Job job, SheetFormat format, ListSheet[] lists) =>
        lists.Length == 1
            ? lists[0].Pages(job)
            :
            [
                new(
                    format,
                    lists[0].Block with
                    {
                        Arrow = "",
                    },
                    (pad, box) => Draw(pad, box.Within(3), lists)
                ),
            ];

    private static void Draw(SheetCanvas pad, Box left, ListSheet[] lists)
    {
        foreach ((int i, ListSheet list) in lists.Index())
        {
            if (i > 0)
            {
                pad.Text(
                    left.Left,
                    left.Top - UnderMm + NameMm,
                    list.Block.Sheet,
                    Letters.Bench,
                    Anchor.BaselineLeft,
                    true
                );
                left = left with { Top = left.Top - UnderMm };
            }

            left = left with { Top = list.Draw(pad, left) };
        }
    }
}
