using PlankFit.Draughting.Skia;
using UglyToad.PdfPig;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>The smallest letters of any sheet, which <see cref="Support.SheetCheck"/> holds every lettering to on sheets of all kinds and of jobs by chance, are of 7 points as printers count them.</summary>
public sealed class LetterSizesTests
{
    [Fact]
    public void TheSmallestLettersAreOfSevenPoints()
    {
        Drawing sheet = new(
            "letters",
            100,
            50,
            [new Lettering("text", Pen.Thin, new(10, 10), "Hx 1/32", Letters.Small)]
        );
        using var file = new MemoryStream();
        PdfWriter.Write(file, [sheet], "letters", TestContext.Current.CancellationToken);
        using var pdf = PdfDocument.Open(file.ToArray());
        Assert.All(pdf.GetPage(1).Letters, l => Assert.InRange(l.PointSize, 7, 7.1));
        // And the capital is as high as it is said to be: mm of 72 to the inch.
        Assert.Equal(
            Letters.Small,
            pdf.GetPage(1).Letters.First(l => l.Value == "H").BoundingBox.Height / 72 * 25.4,
            0.05
        );
    }
}
