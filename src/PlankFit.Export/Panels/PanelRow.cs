using System.Collections.Immutable;

namespace PlankFit.Export.Panels;

/// <summary>One view of a panel with its heading and its legend, as high as it needs; drawn at the head of the box that it is given.</summary>
internal sealed record PanelRow(double NeedsMm, Action<SheetCanvas, Box> View)
{
    /// <summary>As many to a page as there is room for, in their order; one that needs more than a page has one of its own.</summary>
    public static ImmutableArray<ImmutableArray<PanelRow>> Pages(
        IEnumerable<PanelRow> rows,
        double roomMm
    )
    {
        ImmutableArray<ImmutableArray<PanelRow>> pages = [];
        ImmutableArray<PanelRow> page = [];
        foreach (PanelRow row in rows)
        {
            if (!page.IsEmpty && page.Sum(r => r.NeedsMm) + row.NeedsMm > roomMm)
            {
                pages = pages.Add(page);
                page = [];
            }

            page = page.Add(row);
        }

        return page.IsEmpty ? pages : pages.Add(page);
    }

    /// <summary>One below the other; what room is left is shared out, but one alone takes no more than half a page.</summary>
    public static void Draw(SheetCanvas pad, Box room, ImmutableArray<PanelRow> page)
    {
        double left = room.Height - page.Sum(r => r.NeedsMm),
            top = room.Top;
        foreach (PanelRow row in page)
        {
            double height =
                page.Length == 1
                    ? Math.Max(row.NeedsMm, room.Height / 2)
                    : row.NeedsMm + (Math.Max(0, left) / page.Length);
            row.View(pad, room with { Top = top, Bottom = top - height });
            top -= height;
        }
    }
}
