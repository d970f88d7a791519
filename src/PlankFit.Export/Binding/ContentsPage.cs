using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Export.Sheets;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Binding;

/// <summary>The first page of a book, or the first few where it has much to find: what is on which page, each line a link.</summary>
internal static class ContentsPage
{
    private const double LineMm = 6.2;
    private const double InsetMm = 6;
    private const double GapMm = 12;
    private const double NumberMm = 16;
    private const int Columns = 2;

    /// <summary>Beyond these the longest lists within sections go: nobody looks for a sheet through more.</summary>
    private const int MostPages = 3;

    /// <summary>How many pages of contents these sections want.</summary>
    public static int Count(Job job, ImmutableArray<BookMark> sections)
    {
        int room = Columns * Room(job).Rows,
            lines = Fitting(sections, MostPages * room).Length;
        return Math.Max(1, (lines + room - 1) / room);
    }

    /// <param name="sections">With their pages in the book, the first being 0.</param>
    /// <param name="pages">How many the book has, these among them.</param>
    public static (ImmutableArray<Drawing> Pages, ImmutableArray<PageLink> Links) Of(
        Job job,
        ImmutableArray<BookMark> sections,
        int pages
    )
    {
        var format = SheetFormat.Bench(job);
        (Box box, double top, int rows) = Room(job);
        int room = Columns * rows;
        Entry[] entries = Fitting(sections, MostPages * room);
        double width = (box.Width - ((Columns - 1) * GapMm)) / Columns;
        (double Left, double Foot) Place(int i) =>
            (
                box.Left + (i % room / rows * (width + GapMm)),
                top - Letters.Heading - (i % rows * LineMm)
            );

        return (
            SheetPage.Numbered(
                job,
                [
                    .. entries
                        .Chunk(room)
                        .DefaultIfEmpty([])
                        .Select(on => new SheetPage(
                            format,
                            new(
                                "Bench book",
                                "all sheets in the order of the work",
                                "",
                                null,
                                Cautions.Saw
                            )
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
                                foreach ((int i, Entry entry) in on.Index())
                                {
                                    (double left, double foot) = Place(i);
                                    Draw(pad, left, foot, width, entry);
                                }
                            }
                        )),
                ]
            ),
            [
                .. entries.Select(
                    (entry, i) =>
                    {
                        (double left, double foot) = Place(i);
                        return new PageLink(
                            i / room,
                            new(left, foot - 1.6),
                            new(left + width, foot - 1.6 + LineMm),
                            entry.Mark.Page
                        );
                    }
                ),
            ]
        );
    }

    private static (Box Box, double Top, int Rows) Room(Job job)
    {
        Box box = Frame.Inside(SheetFormat.Bench(job)).Within(5);
        double top = box.Top - Letters.Name - 5;
        return (box, top, (int)((top - box.Bottom) / LineMm));
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

    /// <summary>Sections and what is in them; where that is more than the pages hold, the longest lists within sections go.</summary>
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
