using System.Collections.Immutable;
using System.Globalization;

namespace PlankFit.Reading.Lengths;

/// <summary>Cuts the text of a length into tokens. Never fails: what it does not know becomes a stranger.</summary>
internal static class LengthScanner
{
    /// <summary>More digits before the point than any length of a boat has.</summary>
    private const int MostDigits = 12;

    /// <summary>After the point as many as a spreadsheet puts out: with a whole part in metres or feet they still fit decimal arithmetic.</summary>
    private const int MostDecimals = 17;

    public static ImmutableArray<LengthToken> Scan(string text)
    {
        ImmutableArray<LengthToken>.Builder tokens = ImmutableArray.CreateBuilder<LengthToken>();
        int at = 0;
        while (at < text.Length)
        {
            if (char.IsWhiteSpace(text[at]))
            {
                at++;
                continue;
            }

            LengthToken token = Next(text, at);
            tokens.Add(token);
            at += token.Text.Length;
        }

        return tokens.ToImmutable();
    }

    private static LengthToken Next(string text, int at)
    {
        char c = text[at];
        if (char.IsAsciiDigit(c) || (c == '.' && IsDigit(text, at + 1)))
        {
            return Number(text, at);
        }

        if (char.IsLetter(c))
        {
            int end = at;
            while (end < text.Length && char.IsLetter(text[end]))
            {
                end++;
            }

            return Word(text[at..end]);
        }

        string one = text.Substring(at, 1);
        return c switch
        {
            // Hyphen, the two kinds of hyphen and dash that word processors put in its place, and the minus sign.
            '-' or '\u2010' or '\u2011' or '\u2013' or '\u2212' => new(TokenKind.Dash, one, 0),
            '+' => new(TokenKind.Plus, one, 0),
            '\'' or '\u2032' or '\u2019' => new(TokenKind.FootMark, one, 0),
            '"' or '\u2033' or '\u201D' => new(TokenKind.InchMark, one, 0),
            ',' => new(TokenKind.Comma, one, 0),
            '½' => Vulgar(one, 1, 2),
            '¼' => Vulgar(one, 1, 4),
            '¾' => Vulgar(one, 3, 4),
            '⅛' => Vulgar(one, 1, 8),
            '⅜' => Vulgar(one, 3, 8),
            '⅝' => Vulgar(one, 5, 8),
            '⅞' => Vulgar(one, 7, 8),
            _ => new(TokenKind.Stranger, one, 0),
        };
    }

    private static LengthToken Number(string text, int at)
    {
        int whole = Digits(text, at);
        int end = whole;
        if (end < text.Length && text[end] is '/' or '\u2044' && IsDigit(text, end + 1))
        {
            end = Digits(text, end + 1);
            return Fraction(text[at..end], text[at..whole], text[(whole + 1)..end]);
        }

        bool point = end < text.Length && text[end] == '.' && IsDigit(text, end + 1);
        if (point)
        {
            end = Digits(text, end + 1);
        }

        string digits = text[at..end];
        return whole - at > MostDigits || end - whole - 1 > MostDecimals
            ? new(TokenKind.Stranger, digits, 0)
            : new(
                point ? TokenKind.Decimal : TokenKind.Whole,
                digits,
                decimal.Parse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture)
            );
    }

    private static LengthToken Fraction(string text, string numerator, string denominator) =>
        int.TryParse(numerator, NumberStyles.None, CultureInfo.InvariantCulture, out int n)
        && int.TryParse(denominator, NumberStyles.None, CultureInfo.InvariantCulture, out int d)
        && n is > 0 and < 10_000
        && d is 2 or 4 or 8 or 16 or 32 or 64 or 128
            ? new(TokenKind.Fraction, text, (decimal)n / d, n, d)
            : new(TokenKind.Stranger, text, 0);

    private static LengthToken Vulgar(string text, int numerator, int denominator) =>
        new(TokenKind.Fraction, text, (decimal)numerator / denominator, numerator, denominator);

    private static LengthToken Word(string word) =>
        word switch
        {
            "mm" => new(TokenKind.MetricUnit, word, 1),
            "cm" => new(TokenKind.MetricUnit, word, 10),
            "m" => new(TokenKind.MetricUnit, word, 1000),
            "in" => new(TokenKind.InchMark, word, 0),
            "ft" => new(TokenKind.FootMark, word, 0),
            _ => new(TokenKind.Stranger, word, 0),
        };

    private static bool IsDigit(string text, int at) =>
        at < text.Length && char.IsAsciiDigit(text[at]);

    private static int Digits(string text, int at)
    {
        while (IsDigit(text, at))
        {
            at++;
        }

        return at;
    }
}
