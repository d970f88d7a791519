using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Export.Sheets;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Binding;

/// <summary>The first page of a book: what is on which page, each line a link.</summary>
internal static class ContentsPage
{
    private const double LineMm = 6.2;
    private const double InsetMm = 6;
    private const double GapMm = 12;
    private const double NumberMm = 16;
    private const int Columns = 2;

    /// <param name="sections">With their pages in the book, the first being 0.</param>
    /// <param name="pages">How many the book has, this one among them.</param>
    public static (Drawing Page, ImmutableArray<PageLink> Links) Of(
        Job job,
        ImmutableArray<BookMark> sections,
        int pages
    )
    {
        var format = SheetFormat.Bench(job);
        Box box = Frame.Inside(format).Within(5);
        double top = box.Top - Letters.Name - 5;
        int rows = (int)((top - box.Bottom) / LineMm);
        Entry[] entries = Fitting(sections, Columns * rows);
        double width = (box.Width - ((Columns - 1) * GapMm)) / Columns;
        ImmutableArray<PageLink>.Builder links = ImmutableArray.CreateBuilder<PageLink>();
        foreach ((int i, Entry entry) in entries.Index())
        {
            (double left, double foot) = Place(i);
            links.Add(
                new(
                    0,
                    new(left, foot - 1.6),
                    new(left + width, foot - 1.6 + LineMm),
                    entry.Mark.Page
                )
            );
        }

        var page = new SheetPage(
            format,
            new("Bench book", "all sheets in the order of the work", "", null, Cautions.Saw)
            {
                Arrow = "",
            },
            (pad, _) =>
            {
                pad.Text(
                    box.Left,
                    box.Top - Letters.Name,
                    $"Contents: {pages} pages",
                    Letters.Name,
                    bold: true
                );
                foreach ((int i, Entry entry) in entries.Index())
                {
                    (double left, double foot) = Place(i);
                    Draw(pad, left, foot, width, entry);
                }
            }
        );
        return (SheetPage.Numbered(job, [page])[0], links.ToImmutable());

        (double Left, double Foot) Place(int i) =>
            (box.Left + (i / rows * (width + GapMm)), top - Letters.Heading - (i % rows * LineMm));
    }

    private static void Draw(SheetCanvas pad, double left, double foot, double width, Entry entry)
    {
        double inset = entry.Deep ? InsetMm : 0,
            size = entry.Deep ? Letters.Bench : Letters.Heading;
        pad.Text(
            left + inset,
            foot,
            Letters.Shortened(entry.Mark.Name, size, width - inset - NumberMm, !entry.Deep),
            size,
            bold: !entry.Deep
        );
        pad.Text(
            left + width,
            foot,
            (entry.Mark.Page + 1).ToString(CultureInfo.InvariantCulture),
            size,
            Anchor.BaselineRight,
            !entry.Deep
        );
        pad.Line(left, foot - 1.5, left + width, foot - 1.5, Pens.Rule);
    }

    /// <summary>Sections and what is in them; where that is more than the page holds, the longest lists within sections go.</summary>
    private static Entry[] Fitting(ImmutableArray<BookMark> sections, int room)
    {
        int[] within = [.. sections.Select(s => s.Within.Length)];
        while (sections.Length + within.Sum() > room && within.Max() > 0)
        {
            within[Array.IndexOf(within, within.Max())] = 0;
        }

        return
        [
            .. sections
                .SelectMany(
                    (s, i) =>
                        s
                            .Within.Take(within[i])
                            .Select(w => new Entry(w, true))
                            .Prepend(new(s, false))
                )
                .Take(room),
        ];
    }

    private sealed record Entry(BookMark Mark, bool Deep);
}
