using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Binding;

/// <summary>All sheets of a job in one book: contents, then section after section, every page with its number in the book below its frame.</summary>
public static class BenchBook
{
    private const string Contents = "Contents";
    private const double NumberMm = 2.2;

    /// <summary>Above the sheet's edge: below the frame, and where printers still print.</summary>
    private const double NumberUpMm = 4.4;

    /// <param name="sections">In the order of the work; those without a page are passed over.</param>
    public static Book Of(Job job, IEnumerable<BoundSheets> sections)
    {
        BoundSheets[] bound = [.. sections.Where(s => s.Pages.Count > 0)];
        int before = ContentsPage.Count(job, Marks(bound, 0)),
            pages = before + bound.Sum(s => s.Pages.Count);
        ImmutableArray<BookMark> marks = Marks(bound, before);
        (ImmutableArray<Drawing> contents, ImmutableArray<PageLink> links) = ContentsPage.Of(
            job,
            marks,
            pages
        );
        return new(
            $"{job.Name}: bench book",
            [
                .. contents
                    .Concat(bound.SelectMany(s => s.Pages))
                    .Select((sheet, i) => Numbered(sheet, i + 1, pages)),
            ],
            [new(Contents, 0, []), .. marks],
            links
        );
    }

    /// <param name="before">Pages before the first section.</param>
    private static ImmutableArray<BookMark> Marks(BoundSheets[] bound, int before)
    {
        ImmutableArray<BookMark>.Builder marks = ImmutableArray.CreateBuilder<BookMark>();
        int page = before;
        foreach (BoundSheets section in bound)
        {
            marks.Add(new(section.Name, page, Within(section.Pages, page, 0)));
            page += section.Pages.Count;
        }

        return marks.ToImmutable();
    }

    /// <summary>Runs of sheets that are looked for by the same words, and within these by the next.</summary>
    private static ImmutableArray<BookMark> Within(
        IEnumerable<Drawing> sheets,
        int first,
        int depth
    )
    {
        ImmutableArray<BookMark>.Builder marks = ImmutableArray.CreateBuilder<BookMark>();
        List<Drawing> run = [];
        int page = first;
        foreach (Drawing sheet in sheets)
        {
            if (run.Count > 0 && Word(run[0]) != Word(sheet))
            {
                Close();
            }

            run.Add(sheet);
        }

        Close();
        return marks.ToImmutable();

        string? Word(Drawing sheet) => sheet.FoundBy.ElementAtOrDefault(depth);

        void Close()
        {
            if (run.Count > 0 && Word(run[0]) is { } word)
            {
                marks.Add(new(word, page, Within(run, page, depth + 1)));
            }

            page += run.Count;
            run = [];
        }
    }

    private static Drawing Numbered(Drawing sheet, int number, int of) =>
        sheet with
        {
            Shapes = sheet.Shapes.Add(
                new Lettering(
                    Layers.Text,
                    Pen.Thin,
                    new(sheet.WidthMm - Frame.MarginMm, NumberUpMm),
                    $"bench book, page {number} of {of}",
                    NumberMm,
                    Anchor.BaselineRight
                )
            ),
        };
}
