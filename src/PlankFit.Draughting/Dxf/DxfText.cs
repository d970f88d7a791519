using System.Text;

namespace PlankFit.Draughting.Dxf;

/// <summary>
/// Text brought down to ASCII: the code page of an R2000 or R12 file cannot be relied on, and the stroke fonts of its readers have few signs.
/// </summary>
public static class DxfText
{
    /// <summary>Signs become words or fractions, accents are dropped, and what is left without an ASCII form becomes a question mark.</summary>
    public static string Ascii(string text)
    {
        var made = new StringBuilder(text.Length + 8);
        foreach (Rune rune in text.EnumerateRunes())
        {
            char sign = rune.IsBmp ? (char)rune.Value : '?';
            if (Fraction(sign) is { } fraction)
            {
                made.Append(made.Length > 0 && char.IsAsciiDigit(made[^1]) ? " " : "");
                made.Append(fraction);
            }
            else if (sign == '%' && made.Length > 0 && made[^1] == '%')
            {
                made.Append(" %"); // two together begin a control code
            }
            else
            {
                made.Append(Words(sign));
            }
        }

        return made.ToString();
    }

    private static string? Fraction(char sign) =>
        sign switch
        {
            '½' => "1/2",
            '¼' => "1/4",
            '¾' => "3/4",
            '⅛' => "1/8",
            '⅜' => "3/8",
            '⅝' => "5/8",
            '⅞' => "7/8",
            _ => null,
        };

    private static string Words(char sign)
    {
        switch (sign)
        {
            case '\\':
                return "/"; // a backslash begins a control code
            case '^':
                return "^ "; // a caret alone does too
            case >= ' ' and <= '~':
                return sign.ToString();
            case '°':
                return " deg";
            case '′' or '’' or '‘':
                return "'";
            case '″' or '“' or '”':
                return "\"";
            case '±':
                return "+/-";
            case '×':
                return "x";
            case '·' or '•':
                return ".";
            case '‐' or '–' or '—' or '−':
                return "-";
            case '←':
                return "<-";
            case '→':
                return "->";
            case '↑':
                return "up";
            case '↓':
                return "down";
            case '≥':
                return ">=";
            case '≤':
                return "<=";
            case '…':
                return "...";
            case '\u00A0' or '\u2009' or '\u202F' or '\t' or '\r' or '\n':
                return " ";
            default:
                return Sign(sign) ?? DxfLetters.Of(sign) ?? "?";
        }
    }

    private static string? Sign(char sign) =>
        sign switch
        {
            '‚' => ",",
            '„' or '«' or '»' => "\"",
            '¡' => "!",
            '†' => "+",
            '¢' => "c",
            '£' => "GBP",
            '€' => "EUR",
            '¥' => "JPY",
            '§' => "par.",
            '©' => "(c)",
            '®' => "(R)",
            '™' => "(TM)",
            '№' => "No.",
            'ª' => "a",
            'º' => "o",
            '¹' => "1",
            '²' => "2",
            '³' => "3",
            'µ' => "u",
            '¶' => "P.",
            '÷' => ":",
            _ => null,
        };
}
