using PlankFit.Draughting.Skia;
using PlankFit.Tests.Support;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Outline;

namespace PlankFit.Tests.Export;

/// <summary>A book's outline and links, read by four readers that share no code with the writer.</summary>
public sealed class PdfBookTests
{
    private const string Pypdf = """
        import sys
        from pypdf import PdfReader
        r = PdfReader(sys.argv[1], strict=True)
        print(r.page_mode)
        def walk(o, depth):
            for x in o:
                if isinstance(x, list):
                    walk(x, depth + 1)
                else:
                    print("  " * depth + x.title, r.get_destination_page_number(x) + 1)
        walk(r.outline, 0)
        for i, p in enumerate(r.pages):
            for a in p.get("/Annots", []):
                a = a.get_object()
                d = r.named_destinations[a["/Dest"]]
                print("link", i + 1, r.get_destination_page_number(d) + 1, *[round(float(v) * 25.4 / 72, 2) for v in a["/Rect"]])
        """;

    /// <summary>Seven pages, three lines of outline, one with two below it, one of these with one more.</summary>
    private static Book Seven =>
        new(
            "Bench book",
            [
                .. Enumerable
                    .Range(1, 7)
                    .Select(i =>
                        SampleDrawings.Of(
                            i == 4 ? 420 : 297,
                            210,
                            new Lettering("text", Pen.Thin, new(20, 100), $"sheet {i}", 10)
                        )
                    ),
            ],
            [
                new("Before ½″ (kerf) → öØ", 1, []),
                new("Cards", 2, [new("S1-01", 2, []), new("S1-02", 3, [new("piece a", 4, [])])]),
                new("Labels", 6, []),
            ],
            [new(0, new(20, 90), new(120, 110), 6), new(0, new(20, 60), new(120, 80), 3)]
        );

    [Fact]
    public void PypdfFindsEveryLineOfTheOutlineAndEveryLinkAtItsPage()
    {
        using var folder = new TempFolder();
        string[] read = OutsideTool
            .Run("/usr/bin/python3", "python3 python3-pypdf", "-c", Pypdf, Written(folder))
            .TrimEnd()
            .Split('\n');
        Assert.Equal(
            [
                "/UseOutlines",
                "Before ½″ (kerf) → öØ 2",
                "Cards 3",
                "  S1-01 3",
                "  S1-02 4",
                "    piece a 5",
                "Labels 7",
                "link 1 7 20.0 90.0 120.0 110.0",
                "link 1 4 20.0 60.0 120.0 80.0",
            ],
            read
        );
    }

    [Fact]
    public void QpdfFindsNoFaultAndTheSameOutline()
    {
        using var folder = new TempFolder();
        string file = Written(folder);
        Assert.Contains(
            "No syntax or stream encoding errors found",
            OutsideTool.Run("qpdf", "qpdf", "--check", file),
            StringComparison.Ordinal
        );
        using var json = System.Text.Json.JsonDocument.Parse(
            OutsideTool.Run("qpdf", "qpdf", "--json", "--json-key=outlines", file)
        );
        System.Text.Json.JsonElement[] lines =
        [
            .. json.RootElement.GetProperty("outlines").EnumerateArray(),
        ];
        Assert.Equal([2, 3, 7], lines.Select(l => l.GetProperty("destpageposfrom1").GetInt32()));
        Assert.Equal(
            [3, 4],
            lines[1]
                .GetProperty("kids")
                .EnumerateArray()
                .Select(l => l.GetProperty("destpageposfrom1").GetInt32())
        );
        Assert.False(lines[1].GetProperty("open").GetBoolean());
    }

    [Fact]
    public void PopplerListsTheOutlineAndReadsThePages()
    {
        using var folder = new TempFolder();
        string file = Written(folder);
        string xml = OutsideTool.Run("pdftohtml", "poppler-utils", "-xml", "-stdout", "-i", file);
        string outline = xml[xml.IndexOf("<outline>", StringComparison.Ordinal)..];
        Assert.Contains("<item page=\"5\">piece a</item>", outline, StringComparison.Ordinal);
        Assert.Contains("<item page=\"7\">Labels</item>", outline, StringComparison.Ordinal);
        Assert.Contains(
            "Pages:           7",
            OutsideTool.Run("pdfinfo", "poppler-utils", file),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "sheet 4",
            OutsideTool.Run("pdftotext", "poppler-utils", file, "-"),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void PdfPigReadsTheOutline()
    {
        using var pdf = PdfDocument.Open(Bytes(Seven));
        Assert.True(pdf.TryGetBookmarks(out Bookmarks? bookmarks));
        Assert.Equal(
            ["Before ½″ (kerf) → öØ", "Cards", "S1-01", "S1-02", "piece a", "Labels"],
            bookmarks!.GetNodes().Select(n => n.Title)
        );
        Assert.Equal(
            [2, 3, 3, 4, 5, 7],
            bookmarks!.GetNodes().OfType<DocumentBookmarkNode>().Select(n => n.PageNumber)
        );
    }

    [Fact]
    public void TwoRunsGiveTheSameBytes() => Assert.Equal(Bytes(Seven), Bytes(Seven));

    /// <summary>The file's own bytes stay as they are: an outline is only put after them.</summary>
    [Fact]
    public void ABookWithoutMarksIsItsBeginning()
    {
        byte[] with = Bytes(Seven),
            without = Bytes(Seven with { Marks = [] });
        Assert.Equal(without, with[..without.Length]);
        Assert.True(with.Length > without.Length);
    }

    private static string Written(TempFolder folder)
    {
        string file = folder.File("book.pdf");
        File.WriteAllBytes(file, Bytes(Seven));
        return file;
    }

    private static byte[] Bytes(Book book)
    {
        using var made = new MemoryStream();
        PdfWriter.Write(made, book);
        return made.ToArray();
    }
}
