namespace PlankFit.Reading.Lengths;

/// <summary>What is wrong with a text that is no length, in half sentences that follow the text as written.</summary>
internal static class LengthFaults
{
    public const string TooLong = "is more than a kilometre";

    public static string EighthsBeyond7(string text) =>
        $"has {text} eighths: the last group is eighths of an inch, 0 to 7";

    public static string InchesBeyond11(string text) =>
        $"has {text} inches: the middle group is inches, 0 to 11";

    public static string BareInEighths(string? text) =>
        "is a bare number, which means nothing in feet-inches-eighths"
        + (text is { Length: > 1 } && text.All(char.IsAsciiDigit) ? RunOn(text) : "")
        + ": write feet-inches-eighths (5-4-6)"
        + (text is null ? " in quotes, or the length with its unit" : "");

    /// <summary>In a table of eighths, anything but eighths.</summary>
    public static string NotEighths(string word, ReadOnlySpan<LengthToken> t) =>
        word switch
        {
            "W" or "N" => BareInEighths(t[0].Text),
            _ when Known(word) =>
                "is not feet-inches-eighths, and the units of this job are ft-in-8: every cell of its table is in that notation",
            _ => Explain(word, t),
        };

    /// <summary>Why no rule of the grammar took the tokens.</summary>
    public static string Explain(string word, ReadOnlySpan<LengthToken> t)
    {
        foreach (LengthToken token in t)
        {
            switch (token.Kind)
            {
                case TokenKind.Comma:
                    return "has a comma: decimals take a point (1.5), thousands take nothing (1200)";
                case TokenKind.Stranger:
                    return Stranger(token.Text);
            }
        }

        return word switch
        {
            "W-W" or "WW" => Ambiguous(t),
            "W-W-W-W" or "W-W-WFF" => "has a group too many: feet-inches-eighths is three",
            "W-" or "W-W-" =>
                "breaks off after the dash: feet-inches-eighths is three groups, 5-4-6",
            "F" or "WF" or "W-F" =>
                "is a fraction without a unit: write in or ft after it (3/8 in)",
            "Fu" or "WFu" or "W-Fu" => "is a fraction of a metric unit: write decimals (2.5 mm)",
            "" => "has no number",
            _ when word.Contains(TokenKind.Plus, StringComparison.Ordinal) =>
                "has a + that belongs only to feet-inches-eighths (5-4-6+)",
            _ when word.Contains("--", StringComparison.Ordinal) => "has two dashes together",
            _ when word.Contains(TokenKind.MetricUnit, StringComparison.Ordinal)
                    && (
                        word.Contains(TokenKind.FootMark, StringComparison.Ordinal)
                        || word.Contains(TokenKind.InchMark, StringComparison.Ordinal)
                    ) => "mixes metric units with feet or inches",
            _ when !word.AsSpan().ContainsAny("WNF") => "has no number",
            _ => "is not a length",
        };
    }

    private static bool Known(string word) =>
        word.Length > 0
        && word[^1] is TokenKind.MetricUnit or TokenKind.InchMark or TokenKind.FootMark
        && !word.Contains(TokenKind.Stranger, StringComparison.Ordinal)
        && !word.Contains(TokenKind.Comma, StringComparison.Ordinal);

    private static string Ambiguous(ReadOnlySpan<LengthToken> t)
    {
        string first = t[0].Text;
        string last = t[^1].Text;
        return "has two groups, which can be read in more than one way ("
            + $"{first} ft {last} in"
            + (
                last.Length > 1
                    ? $", or {first} ft {last[..^1]} in and {last[^1]} eighths run on"
                    : ""
            )
            + $", or {first} in and {last} eighths): write all three groups, feet-inches-eighths";
    }

    private static string RunOn(string digits) =>
        digits.Length == 2
            ? $" (run on, it could be {digits[0]} {digits[1]}/8 in or {digits} in)"
            : $" (run on, it could be {digits[..^1]} {digits[^1]}/8 in or {digits[0]} ft {digits[1..^1]} {digits[^1]}/8 in)";

    private static string Stranger(string text)
    {
        if (text.Contains('/') || text.Contains('\u2044'))
        {
            return text.StartsWith('0')
                ? $"has the fraction {text}: leave a fraction of nothing out"
                : $"has the fraction {text}, which no rule shows: halves, quarters, eighths, 16ths, 32nds, 64ths and 128ths are read";
        }

        if (char.IsAsciiDigit(text[0]) || text[0] == '.' && text.Length > 1)
        {
            return "has more digits than a length needs";
        }

        return text.ToLowerInvariant() switch
        {
            "nan" or "inf" or "infinity" => $"is {text}, which is not a number",
            "e" => "is written with an exponent: write the number out",
            _ when char.IsLetter(text[0]) =>
                $"has \"{text}\", which is not a unit: units are mm, cm, m, in, ft",
            _ => $"has \"{text}\", which belongs to no length",
        };
    }
}
