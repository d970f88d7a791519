using PlankFit.Draughting.Pdf;
using PlankFit.Draughting.Text;
using SkiaSharp;

namespace PlankFit.Draughting.Skia;

/// <summary>Drawings as the pages of one PDF, each page the size of its drawing, in true size. The same drawings give the same bytes.</summary>
public static class PdfWriter
{
    /// <summary>The longest side a page may have: 200 inches, beyond which common readers and print shops give up.</summary>
    public const double LongestMm = 5080;

    private const float PointsPerMm = 72f / 25.4f;

    // Page sizes are rounded to a 7,200th of an inch.
    private const float RasterDpi = 7200;

    /// <param name="pages">At least one, none longer than <see cref="LongestMm"/>.</param>
    /// <param name="title">For the document's own title field.</param>
    /// <exception cref="ArgumentException">A page is too long, a letter is missing, or a drawing is faulty; the message names it.</exception>
    public static void Write(
        Stream stream,
        IReadOnlyList<Drawing> pages,
        string title,
        CancellationToken cancel = default
    ) => Write(stream, Book.Plain(title, pages), cancel);

    /// <param name="book">As above; its pages may be found by outline and links.</param>
    /// <exception cref="ArgumentException">As above.</exception>
    public static void Write(Stream stream, Book book, CancellationToken cancel = default)
    {
        foreach (Drawing page in book.Pages)
        {
            RefuseTooLong(page);
        }

        using var typefaces = Typefaces.For(book.Pages);
        using var painter = new Painter(typefaces);
        // The library cannot take a stream that fails: it ends the program. It writes into its own memory, and what is there is copied.
        using var memory = new SKDynamicMemoryWStream();
        using var document = SKDocument.CreatePdf(memory, Metadata(book.Title));
        bool found = !book.Marks.IsEmpty || !book.Links.IsEmpty;
        ILookup<int, PageLink> links = book.Links.ToLookup(l => l.OnPage);
        foreach ((int number, Drawing page) in book.Pages.Index())
        {
            cancel.ThrowIfCancellationRequested();
            SKCanvas canvas = document.BeginPage(
                (float)page.WidthMm * PointsPerMm,
                (float)page.HeightMm * PointsPerMm
            );
            canvas.Scale(PointsPerMm);
            painter.Paint(canvas, page);
            if (found)
            {
                canvas.DrawNamedDestinationAnnotation(new SKPoint(0, 0), Destination(number));
            }

            foreach (PageLink link in links[number])
            {
                canvas.DrawLinkDestinationAnnotation(
                    new SKRect(
                        (float)link.LowerLeft.X,
                        (float)(page.HeightMm - link.UpperRight.Y),
                        (float)link.UpperRight.X,
                        (float)(page.HeightMm - link.LowerLeft.Y)
                    ),
                    Destination(link.ToPage)
                );
            }

            document.EndPage();
        }

        document.Close();
        using SKData bytes = memory.DetachAsData();
        stream.Write(bytes.AsSpan());
        if (!book.Marks.IsEmpty)
        {
            stream.Write(PdfOutline.Of(bytes.AsSpan(), book.Marks, Destination));
        }
    }

    /// <summary>The name of the place at the head of a page.</summary>
    private static string Destination(int page) => FormattableString.Invariant($"page-{page + 1}");

    private static void RefuseTooLong(Drawing page)
    {
        if (Math.Max(page.WidthMm, page.HeightMm) > LongestMm)
        {
            throw new ArgumentException(
                $"Drawing \"{page.Title}\": a PDF page of {Numbers.Text(page.WidthMm, 0)} by {Numbers.Text(page.HeightMm, 0)} mm is longer than "
                    + $"the {Numbers.Text(LongestMm, 0)} mm that readers and printers take. Cut it into tiles."
            );
        }
    }

    // No dates: that of making would make every run's bytes different, and the library writes any date with the machine's time zone beside it.
    private static SKDocumentPdfMetadata Metadata(string title) =>
        new()
        {
            Title = title,
            Creator = "PlankFit",
            Producer = "PlankFit",
            RasterDpi = RasterDpi,
            EncodingQuality = 101,
        };
}
