using System.Collections.Immutable;
using System.Globalization;

namespace PlankFit.Draughting.Pdf;

/// <summary>
/// An outline for a finished PDF, which the library that draws cannot write: an incremental update after ISO 32000-1, 7.5.6 and 12.3.3. New objects, the
/// catalogue once more with the outline in it, and a cross-reference section of these are put after the file's own bytes, which stay as they are.
/// </summary>
internal static class PdfOutline
{
    /// <param name="pdf">With a plain cross-reference table, and named destinations in its catalogue.</param>
    /// <param name="destination">The name of the destination at the head of a page.</param>
    /// <returns>What is to be put after the file.</returns>
    /// <exception cref="InvalidOperationException">The file is not as this was written for.</exception>
    public static byte[] Of(
        ReadOnlySpan<byte> pdf,
        ImmutableArray<BookMark> marks,
        Func<int, string> destination
    )
    {
        var end = PdfEnd.Of(pdf);
        List<OutlineItem> items = [];
        int root = end.Size;
        (int first, int last) = OutlineItem.Numbered(marks, root, items, root + 1);

        var update = new PdfUpdate(pdf.Length);
        update.Object(
            root,
            Text($"<</Type /Outlines /First {first} 0 R /Last {last} 0 R /Count {marks.Length}>>")
        );
        foreach (OutlineItem item in items)
        {
            update.Object(item.Number, item.Dictionary(destination));
        }

        string catalogue = end.Catalogue;
        update.Object(
            end.Root,
            Text($"{catalogue[..^2]}\n/Outlines {root} 0 R\n/PageMode /UseOutlines>>")
        );
        return update.Ended(root + items.Count + 1, end);
    }

    private static string Text(FormattableString text) =>
        text.ToString(CultureInfo.InvariantCulture);
}
