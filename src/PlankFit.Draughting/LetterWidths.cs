using System.Text;
using PlankFit.Draughting.Fonts;

namespace PlankFit.Draughting;

/// <summary>How wide lettering comes out, so that a sheet can be laid out without any drawing library.</summary>
public static class LetterWidths
{
    /// <param name="capHeightMm">Height of the capitals, as in <see cref="Lettering.HeightMm"/>.</param>
    /// <returns>The advance width in mm; no kerning, as the backends draw it.</returns>
    public static double TextWidth(string text, double capHeightMm, bool bold = false)
    {
        FontFile font = InterFonts.Of(bold);
        return capHeightMm * font.Advances(text) / font.CapHeight;
    }

    /// <summary>Whether every sign of the text can be drawn.</summary>
    public static bool CanDraw(string text, bool bold = false) => FirstMissing(text, bold) is null;

    /// <summary>The text with a question mark for each sign that the lettering lacks: for names that somebody else chose.</summary>
    public static string Drawable(string text, bool bold = false)
    {
        if (CanDraw(text, bold))
        {
            return text;
        }

        var made = new StringBuilder(text.Length);
        foreach (Rune sign in text.EnumerateRunes())
        {
            made.Append(IsThere(sign, bold) ? sign.ToString() : "?");
        }

        return made.ToString();
    }

    /// <summary>The first sign that the lettering lacks, or null.</summary>
    public static Rune? FirstMissing(string text, bool bold)
    {
        foreach (Rune sign in text.EnumerateRunes())
        {
            if (!IsThere(sign, bold))
            {
                return sign;
            }
        }

        return null;
    }

    private static bool IsThere(Rune sign, bool bold) => InterFonts.Of(bold).Glyph(sign.Value) != 0;
}
