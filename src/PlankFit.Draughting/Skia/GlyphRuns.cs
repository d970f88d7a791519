using PlankFit.Draughting.Fonts;
using SkiaSharp;

namespace PlankFit.Draughting.Skia;

/// <summary>
/// Letterings as runs of glyphs that stand exactly where their typeface's own advances put them. A PDF then has each as one word; where places are out by a
/// last digit it has a place of its own for every glyph, five times the bytes.
/// </summary>
internal static class GlyphRuns
{
    /// <param name="font">The typeface in the size wanted; its glyphs have the numbers of the whole font's.</param>
    public static SKTextBlob Of(string text, SKFont font, FontFile whole)
    {
        ushort[] glyphs = font.GetGlyphs(text);
        // In the very steps and the precision in which the library adds advances up.
        float scale = font.Size / whole.UnitsPerEm,
            x = 0;
        using var builder = new SKTextBlobBuilder();
        SKHorizontalRunBuffer run = builder.AllocateHorizontalRun(font, glyphs.Length, 0);
        Span<float> places = run.Positions;
        for (int i = 0; i < glyphs.Length; i++)
        {
            places[i] = x;
            x += scale * whole.Advance(glyphs[i]);
        }

        glyphs.CopyTo(run.Glyphs);
        return builder.Build()!;
    }
}
