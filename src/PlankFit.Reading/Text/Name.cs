using System.Globalization;
using System.Text;
using PlankFit.Planking.Findings;

namespace PlankFit.Reading.Text;

/// <summary>
/// The one rule for every text that a builder chooses: names of jobs, layers, lines, stations and things, woods, grades, sources, files. What it lets through
/// can be drawn by the typeface of the sheets (Inter), has a form in the plain letters of cut files, and does nothing to a terminal, a list or a page.
/// </summary>
public static class Name
{
    /// <summary>Beyond this it is no name: the longest in the demos has 60, letters.</summary>
    public const int Longest = 100;

    public const string Accepted =
        "accepted: up to 100 letters (Latin, Greek or Cyrillic), digits, blanks and common signs";

    private const string Signs = "¡¢£¥§©ª«®°±²³µ¶·¹º»¼½¾×÷‐–—‘’‚“”„†•…′″€№™−←↑→↓≤≥⅛⅜⅝⅞";

    /// <summary>What is wrong with a text as a name, for the end of a message; null where it will do.</summary>
    public static string? Fault(string text)
    {
        int count = 0;
        foreach (Rune sign in text.EnumerateRunes())
        {
            count++;
            if (!IsAccepted(sign))
            {
                return FormattableString.Invariant(
                    $"its sign {count}, U+{sign.Value:X4} ({Kind(sign)}), cannot be drawn on sheets and in cut files; {Accepted}"
                );
            }
        }

        return count > Longest
            ? FormattableString.Invariant(
                $"has {count} signs, too many to stand on a plank or a sheet; {Accepted}"
            )
            : null;
    }

    /// <summary>Whether the sign may stand in a name.</summary>
    public static bool IsAccepted(Rune sign) =>
        sign.IsBmp
        && (char)sign.Value is var c
        && (
            c is >= ' ' and <= '~'
            || (c is >= 'À' and <= 'ſ' and not 'ŉ' && char.IsLetter(c)) // Latin-1 and Latin Extended-A
            || c is >= 'Ș' and <= 'ț' // Romanian
            || (c is >= 'Ά' and <= 'ώ' && char.IsLetter(c)) // Greek of today
            || c is >= 'Ѐ' and <= 'џ' or 'Ґ' or 'ґ' // Cyrillic of today
            || Signs.Contains(c, StringComparison.Ordinal)
        );

    private static string Kind(Rune sign) =>
        Rune.GetUnicodeCategory(sign) switch
        {
            UnicodeCategory.Control => "a control character",
            UnicodeCategory.Format => "an unseen sign that steers the text around it",
            UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator => "a line's end",
            UnicodeCategory.SpaceSeparator => "a blank that is not the common one",
            UnicodeCategory.NonSpacingMark
            or UnicodeCategory.EnclosingMark
            or UnicodeCategory.SpacingCombiningMark =>
                "a mark apart from its letter: type the two as one sign",
            UnicodeCategory.OtherSymbol or UnicodeCategory.ModifierSymbol => "a picture or symbol",
            UnicodeCategory.PrivateUse
            or UnicodeCategory.Surrogate
            or UnicodeCategory.OtherNotAssigned => "a sign without a meaning",
            _ => PlainText.Of(sign.ToString()),
        };
}
