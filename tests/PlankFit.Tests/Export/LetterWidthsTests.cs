using PlankFit.Draughting.Fonts;
using SkiaSharp;

namespace PlankFit.Tests.Export;

public class LetterWidthsTests
{
    private const string Signs = "°′″±×·–—½¼¾⅛⅜⅝⅞←→↑↓≥≤";

    public static TheoryData<string> Texts =>
        [
            "S1-07",
            "Forward seam, 1650.5 mm from station 3",
            string.Concat(Enumerable.Range(' ', 95).Select(i => (char)i)),
            string.Concat(Enumerable.Range(0xA1, 95).Select(i => (char)i)),
            Signs,
            "Łódź, Ærø, Škoda, Őrség, Ελλάς, Нева",
            "",
        ];

    /// <summary>Outside source: Skia's own reading of the same typefaces.</summary>
    [Theory]
    [MemberData(nameof(Texts))]
    public void WidthsAndCapitalsAreThoseOfTheDrawingLibrary(string text)
    {
        foreach (bool bold in (bool[])[false, true])
        {
            using var data = SKData.CreateCopy(InterFonts.Of(bold).Bytes.ToArray());
            using var face = SKTypeface.FromData(data);
            using var font = new SKFont(face, (float)InterFonts.Of(bold).SizeFor(100))
            {
                Subpixel = true,
                LinearMetrics = true,
                Hinting = SKFontHinting.None,
            };
            Assert.Equal(font.MeasureText(text), LetterWidths.TextWidth(text, 100, bold), 0.05);
            Assert.True(font.ContainsGlyphs(text));
            Assert.True(LetterWidths.CanDraw(text, bold));

            font.MeasureText("H", out SKRect box);
            Assert.Equal(100, box.Height, 0.1);
        }
    }

    [Fact]
    public void BoldIsBold() =>
        Assert.True(
            LetterWidths.TextWidth("HEADS AFT", 5, true) > LetterWidths.TextWidth("HEADS AFT", 5)
        );

    [Fact]
    public void ASignThatIsMissingIsFoundAndCanBeReplaced()
    {
        Assert.False(LetterWidths.CanDraw("船 7"));
        Assert.Equal("? 7", LetterWidths.Drawable("船 7"));
        Assert.Equal("?", LetterWidths.Drawable("🛶"));
        Assert.Equal("12½°", LetterWidths.Drawable("12½°"));
    }

    [Fact]
    public void ASubsetDrawsItsLettersAsTheWholeDoesAndNoOthers()
    {
        byte[] whole = InterFonts.Regular.Bytes.ToArray();
        byte[] small = FontSubset.Of(InterFonts.Regular, "Skåne Æ½ ⅜".Select(c => (int)c));
        Assert.True(small.Length < 40_000, $"{small.Length} bytes");
        foreach (char sign in "Skåne Æ½⅜")
        {
            Assert.Equal(Outline(whole, sign), Outline(small, sign));
        }

        using var data = SKData.CreateCopy(small);
        using var face = SKTypeface.FromData(data);
        using var font = new SKFont(face);
        Assert.False(font.ContainsGlyphs("Q"));
    }

    private static string Outline(byte[] file, char sign)
    {
        using var data = SKData.CreateCopy(file);
        using var face = SKTypeface.FromData(data);
        using var font = new SKFont(face, 1000) { Hinting = SKFontHinting.None };
        using SKPath path = font.GetTextPath(sign.ToString(), new SKPoint(0, 0));
        return path.ToSvgPathData();
    }
}
