using PlankFit.Draughting.Skia;
using SkiaSharp;

namespace PlankFit.Tests.Export;

public class PngWriterTests
{
    [Fact]
    public void ThePictureHasTheDotsAskedForAndInkWhereItWasDrawn()
    {
        using var picture = SKBitmap.Decode(Bytes(SampleDrawings.Everything, 254)); // ten dots a millimetre
        Assert.Equal(2100, picture.Width);
        Assert.Equal(2970, picture.Height);
        Assert.True(Level(70, 150) < 40, "the square's lower side");
        Assert.True(Level(20, 200) < 40, "the square's left side");
        Assert.Equal(255, Level(70, 200)); // inside the square
        Assert.Equal(230, Level(60, 115)); // the grey fill
        Assert.Equal(0, Level(160, 100)); // the black dot
        Assert.True(Level(21, 80) < 60, "a dash");
        Assert.Equal(255, Level(23.3, 80)); // between two dashes

        int Level(double x, double y) =>
            picture.GetPixel((int)(10 * x), (int)(10 * (297 - y))).Green;
    }

    [Fact]
    public void TwoRunsGiveTheSameBytes() =>
        Assert.Equal(Bytes(SampleDrawings.Everything, 100), Bytes(SampleDrawings.Everything, 100));

    [Fact]
    public void APictureTooLargeIsRefusedByName()
    {
        ArgumentException refused = Assert.Throws<ArgumentException>(() =>
            Bytes(SampleDrawings.Of(5000, 300), 600)
        );
        Assert.Contains("\"sample\"", refused.Message, StringComparison.Ordinal);
    }

    private static byte[] Bytes(Drawing drawing, double dpi)
    {
        var made = new MemoryStream();
        PngWriter.Write(made, drawing, dpi);
        return made.ToArray();
    }
}
