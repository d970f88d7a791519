using System.Text;
using PlankFit.Draughting.Fonts;
using SkiaSharp;

namespace PlankFit.Draughting.Skia;

/// <summary>The two typefaces for one document, cut down to the letters used in it where the document will carry them.</summary>
internal sealed class Typefaces : IDisposable
{
    private static readonly Lazy<Typefaces> WholeOnes = new(() =>
        new(
            Made(InterFonts.Regular.Bytes.ToArray(), "regular"),
            Made(InterFonts.SemiBold.Bytes.ToArray(), "semi-bold")
        )
    );

    private readonly SKTypeface? regular;
    private readonly SKTypeface? semiBold;

    private Typefaces(SKTypeface? regular, SKTypeface? semiBold) =>
        (this.regular, this.semiBold) = (regular, semiBold);

    /// <summary>Every glyph there is: for pictures, which carry no letters. Shared, never disposed.</summary>
    public static Typefaces Whole => WholeOnes.Value;

    /// <summary>Only the glyphs that these drawings use: for documents, which carry them.</summary>
    public static Typefaces For(IEnumerable<Drawing> drawings)
    {
        var regular = new HashSet<int>();
        var semiBold = new HashSet<int>();
        foreach (Lettering text in drawings.SelectMany(d => d.Shapes).OfType<Lettering>())
        {
            HashSet<int> signs = text.Bold ? semiBold : regular;
            foreach (Rune sign in text.Text.EnumerateRunes())
            {
                signs.Add(sign.Value);
            }
        }

        return new(
            regular.Count == 0 ? null : Made(FontSubset.Of(InterFonts.Regular, regular), "regular"),
            semiBold.Count == 0
                ? null
                : Made(FontSubset.Of(InterFonts.SemiBold, semiBold), "semi-bold")
        );
    }

    public SKTypeface Of(bool bold) =>
        (bold ? semiBold : regular)
        ?? throw new InvalidOperationException("A document was begun without this typeface.");

    public void Dispose()
    {
        regular?.Dispose();
        semiBold?.Dispose();
    }

    private static SKTypeface Made(byte[] file, string weight)
    {
        using var data = SKData.CreateCopy(file);
        var face = SKTypeface.FromData(data);
        return face is { GlyphCount: > 0 }
            ? face
            : throw new InvalidOperationException($"The {weight} lettering cannot be used.");
    }
}
