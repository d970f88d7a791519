using PlankFit.Draughting.Skia;
using PlankFit.Tests.Support;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;

namespace PlankFit.Tests.Export;

/// <summary>What was drawn is measured back out of the file by PdfPig, which shares no code with the writer.</summary>
public class PdfWriterTests
{
    private const double MmPerPoint = 25.4 / 72;

    [Fact]
    public void PagesHaveTheSizeOfTheirDrawings()
    {
        Drawing long1 = SampleDrawings.Of(5000, 200, SampleDrawings.Everything.Shapes);
        using var pdf = PdfDocument.Open(Bytes(SampleDrawings.Everything, long1));
        Assert.Equal(2, pdf.NumberOfPages);
        Assert.Equal(210, pdf.GetPage(1).Width * MmPerPoint, 0.004);
        Assert.Equal(297, pdf.GetPage(1).Height * MmPerPoint, 0.004);
        Assert.Equal(5000, pdf.GetPage(2).Width * MmPerPoint, 0.004);
        Assert.Equal(200, pdf.GetPage(2).Height * MmPerPoint, 0.004);
    }

    [Fact]
    public void AHundredMillimetreSquareMeasuresAHundredMillimetres()
    {
        PdfRectangle box = Boxes(SampleDrawings.Everything)[0];
        Assert.Equal(100, box.Width * MmPerPoint, 0.002);
        Assert.Equal(100, box.Height * MmPerPoint, 0.002);
        Assert.Equal(20, box.Left * MmPerPoint, 0.01);
        Assert.Equal(150, box.Bottom * MmPerPoint, 0.01);
    }

    [Fact]
    public void ALongLineKeepsItsLengthAtTheFarEndOfALongPage()
    {
        Drawing drawing = SampleDrawings.Of(
            5050,
            300,
            new Polyline("cut", Pen.Thin, [new(10, 20), new(5040.125, 280.75)], false),
            new Polyline("cut", Pen.Thin, [new(4900, 20), new(4900.25, 280.75)], false)
        );
        List<PdfRectangle> boxes = Boxes(drawing);
        Assert.Equal(5030.125, boxes[0].Width * MmPerPoint, 0.01);
        Assert.Equal(260.75, boxes[0].Height * MmPerPoint, 0.01);
        Assert.Equal(4900, boxes[1].Left * MmPerPoint, 0.01);
        Assert.Equal(0.25, boxes[1].Width * MmPerPoint, 0.002);
    }

    [Fact]
    public void DashesAreStrokesOfTheLengthAskedFor()
    {
        Drawing drawing = SampleDrawings.Of(
            200,
            100,
            new Polyline("marks", Pen.Dashed, [new(20, 80), new(120, 80)], false)
        );
        using var pdf = PdfDocument.Open(Bytes(drawing));
        var dashes = pdf.GetPage(1).Paths.SelectMany(p => p).ToList();
        Assert.Equal(25, dashes.Count); // 100 mm, 2.5 on and 1.5 off
        Assert.All(
            dashes,
            d => Assert.Equal(2.5, d.GetBoundingRectangle()!.Value.Width * MmPerPoint, 0.001)
        );
    }

    [Fact]
    public void TextCanBeTakenOutAgainWhereItWasPut()
    {
        using var pdf = PdfDocument.Open(Bytes(SampleDrawings.Everything));
        Page page = pdf.GetPage(1);
        var words = page.GetWords().ToList();
        string[] wanted = ["S1-07", "outer", "face", "12½°", "⅝", "HEADS", "AFT"];
        Assert.All(wanted, w => Assert.Contains(words, found => found.Text == w));

        Letter first = page.Letters[0];
        Assert.Equal(20, first.StartBaseLine.X * MmPerPoint, 0.01);
        Assert.Equal(60, first.StartBaseLine.Y * MmPerPoint, 0.01);

        Letter right = words.Single(w => w.Text == "end").Letters[^1];
        Assert.Equal(190, right.EndBaseLine.X * MmPerPoint, 0.02);
    }

    /// <summary>A lettering is one string of glyphs, and not every glyph with a place of its own: that is five times the bytes, and readers find no words in it.</summary>
    [Fact]
    public void ALetteringIsWrittenAsOneString()
    {
        using var folder = new TempFolder();
        string file = folder.File("text.pdf"),
            plain = folder.File("plain.pdf");
        Lettering[] words =
        [
            new("text", Pen.Thin, new(17.3, 61.7), "keel, fit: 45° off square, leans aft", 2.5),
            new(
                "text",
                Pen.Thin,
                new(211.9, 133.1),
                "Survey launch, 8 m",
                3.5,
                Anchor.MiddleRight,
                37,
                true
            ),
        ];
        File.WriteAllBytes(file, Bytes(SampleDrawings.Of(297, 210, [.. words])));
        OutsideTool.Run("qpdf", "qpdf", "--qdf", "--object-streams=disable", file, plain);
        string text = File.ReadAllText(plain, System.Text.Encoding.Latin1);
        Assert.Equal(words.Length, text.Split(" Tj\n").Length - 1);
        Assert.DoesNotContain(" Td ", text, StringComparison.Ordinal);
    }

    [Fact]
    public void OnlyTheLettersUsedAreCarriedAlong()
    {
        int size = Bytes(SampleDrawings.Everything).Length;
        Assert.True(size < 40_000, $"{size} bytes");
    }

    [Fact]
    public void TwoRunsGiveTheSameBytes() =>
        Assert.Equal(Bytes(SampleDrawings.Everything), Bytes(SampleDrawings.Everything));

    [Fact]
    public void AnOutsideCheckerFindsNoFaultAndReadsTheText()
    {
        using var folder = new TempFolder();
        string file = folder.File("sheet.pdf");
        File.WriteAllBytes(file, Bytes(SampleDrawings.Everything));
        Assert.Contains(
            "No syntax or stream encoding errors found",
            OutsideTool.Run("qpdf", "qpdf", "--check", file),
            StringComparison.Ordinal
        );
        string text = OutsideTool.Run("pdftotext", "poppler-utils", "-layout", file, "-");
        Assert.Contains("S1-07 outer face up, 12½° ⅝ in", text, StringComparison.Ordinal);
        Assert.Contains("upwards", text, StringComparison.Ordinal);
    }

    [Fact]
    public void APageLongerThanReadersTakeIsRefused()
    {
        ArgumentException refused = Assert.Throws<ArgumentException>(() =>
            Bytes(SampleDrawings.Of(6000, 300))
        );
        Assert.Contains("6000", refused.Message, StringComparison.Ordinal);
        Assert.Contains("tiles", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ALetterThatIsMissingIsRefusedAndNotLeftOut()
    {
        Drawing faulty = SampleDrawings.Of(
            100,
            100,
            new Lettering("text", Pen.Thin, new(10, 10), "plank 船", 5)
        );
        ArgumentException refused = Assert.Throws<ArgumentException>(() => Bytes(faulty));
        Assert.Contains("U+8239", refused.Message, StringComparison.Ordinal);
    }

    private static List<PdfRectangle> Boxes(Drawing drawing)
    {
        using var pdf = PdfDocument.Open(Bytes(drawing));
        return [.. pdf.GetPage(1).Paths.Select(p => p.GetBoundingRectangle()!.Value)];
    }

    private static byte[] Bytes(params Drawing[] pages)
    {
        var made = new MemoryStream();
        PdfWriter.Write(made, pages, "Patterns");
        return made.ToArray();
    }
}
