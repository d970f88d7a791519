using System.Globalization;
using System.Text;

namespace PlankFit.Planking.Findings;

/// <summary>
/// Text that somebody else wrote, fit for a terminal, a list or a sheet: what steers a terminal, turns the direction of reading or cannot be seen stands as
/// its code, such as &lt;U+001B&gt;, and what is endless is cut.
/// </summary>
public static class PlainText
{
    /// <summary>More than any message of this program has, letters.</summary>
    public const int Longest = 4000;

    private const int KeptOfEnd = 800;

    /// <summary>The text on one line; of a text longer than <see cref="Longest"/> the beginning and the end.</summary>
    public static string Of(string text) => Seen(Cut(text), keepLines: false);

    /// <summary>The text with its lines' ends and tabs as they are.</summary>
    public static string OfLines(string text) => Seen(text, keepLines: true);

    /// <summary>Whether the sign is seen, and does nothing but be seen.</summary>
    public static bool IsSeen(Rune sign) =>
        Rune.GetUnicodeCategory(sign)
            is not (
                UnicodeCategory.Control
                or UnicodeCategory.Format
                or UnicodeCategory.LineSeparator
                or UnicodeCategory.ParagraphSeparator
                or UnicodeCategory.Surrogate
                or UnicodeCategory.PrivateUse
                or UnicodeCategory.OtherNotAssigned
            );

    private static string Cut(string text)
    {
        if (text.Length <= Longest)
        {
            return text;
        }

        return text[..(Longest - KeptOfEnd)] + " … " + text[^KeptOfEnd..];
    }

    private static string Seen(string text, bool keepLines)
    {
        StringBuilder? shown = null;
        int at = 0;
        while (at < text.Length)
        {
            // Half of a pair of surrogates counts as a sign of its own that is not seen.
            bool whole = Rune.TryGetRuneAt(text, at, out Rune sign);
            int length = whole ? sign.Utf16SequenceLength : 1;
            if (whole && (IsSeen(sign) || (keepLines && sign.Value is '\n' or '\r' or '\t')))
            {
                shown?.Append(text, at, length);
            }
            else
            {
                shown ??= new StringBuilder(text, 0, at, text.Length + 16);
                int code = whole ? sign.Value : text[at];
                shown.Append(CultureInfo.InvariantCulture, $"<U+{code:X4}>");
            }

            at += length;
        }

        return shown?.ToString() ?? text;
    }
}
