using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace PlankFit.Draughting.Pdf;

/// <summary>What stands at a PDF's end: where its cross-reference table begins, and its catalogue.</summary>
/// <param name="Size">One more than the highest number of an object.</param>
/// <param name="Root">The catalogue's number.</param>
/// <param name="Rest">What else the trailer has, to be said again.</param>
internal sealed partial record PdfEnd(
    int TableAt,
    int Size,
    int Root,
    string Rest,
    string Catalogue
)
{
    private const int EntryBytes = 20;

    public static PdfEnd Of(ReadOnlySpan<byte> pdf)
    {
        // The trailer is short and stands last.
        string tail = Encoding.Latin1.GetString(pdf[Math.Max(0, pdf.Length - 1024)..]);
        Match trailer = Trailer().Match(tail);
        if (!trailer.Success)
        {
            throw Unknown("its trailer");
        }

        int tableAt = Whole(trailer.Groups["at"]),
            size = Whole(trailer.Groups["size"]),
            root = Whole(trailer.Groups["root"]);
        string head = string.Create(CultureInfo.InvariantCulture, $"xref\n0 {size}\n");
        ReadOnlySpan<byte> table = pdf[tableAt..];
        if (!table.StartsWith(Encoding.ASCII.GetBytes(head)))
        {
            throw Unknown("its cross-reference table");
        }

        string entry = Encoding.ASCII.GetString(
            table.Slice(head.Length + (root * EntryBytes), EntryBytes)
        );
        ReadOnlySpan<byte> at = pdf[int.Parse(entry[..10], CultureInfo.InvariantCulture)..];
        string begins = string.Create(CultureInfo.InvariantCulture, $"{root} 0 obj\n");
        int ends = at.IndexOf("\nendobj"u8);
        if (!at.StartsWith(Encoding.ASCII.GetBytes(begins)) || ends < 0)
        {
            throw Unknown("its catalogue");
        }

        string catalogue = Encoding.Latin1.GetString(at[begins.Length..ends]);
        return
            catalogue.StartsWith("<</Type /Catalog\n", StringComparison.Ordinal)
            && catalogue.EndsWith(">>", StringComparison.Ordinal)
            ? new(tableAt, size, root, trailer.Groups["rest"].Value, catalogue)
            : throw Unknown("its catalogue");
    }

    private static int Whole(Group group) =>
        int.Parse(group.ValueSpan, CultureInfo.InvariantCulture);

    private static InvalidOperationException Unknown(string what) =>
        new($"A PDF was written in a form that its outline cannot be added to: {what}.");

    [GeneratedRegex(
        @"trailer\n<</Size (?<size>\d+)\n/Root (?<root>\d+) 0 R(?<rest>[^>]*)>>\nstartxref\n(?<at>\d+)\n%%EOF\n?$",
        RegexOptions.ExplicitCapture
    )]
    private static partial Regex Trailer();
}
