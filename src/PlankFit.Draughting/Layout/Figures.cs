namespace PlankFit.Draughting.Layout;

/// <summary>What belongs together in a text: a figure that is broken across lines is read as another.</summary>
internal static class Figures
{
    private static readonly HashSet<string> Units =
    [
        "mm",
        "cm",
        "m",
        "in",
        "ft",
        "kg",
        "g",
        "lb",
        "oz",
        "oz/sq",
        "US",
        "thousandths",
        "ml",
        "l",
        "g/m²",
        "%",
        "m²",
        "sq",
        "psi",
        "MPa",
    ];

    /// <summary>Units of more than one word: what stands before, and what it takes with it.</summary>
    private static readonly HashSet<(string, string)> Pairs =
    [
        ("sq", "ft"),
        ("sq", "yd"),
        ("oz/sq", "yd"),
        ("US", "qt"),
        ("US", "fl"),
        ("fl", "oz"),
    ];

    /// <summary>The text's words, those of a figure (<c>4'-11 5/16"</c>, <c>12.5 mm</c>, <c>- 3</c>) in one.</summary>
    public static IReadOnlyList<string> Words(string text)
    {
        List<string> words = [];
        string last = "";
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (words.Count > 0 && Belongs(last, word))
            {
                words[^1] += " " + word;
            }
            else
            {
                words.Add(word);
            }

            last = word;
        }

        return words;
    }

    private static bool Belongs(string before, string word) =>
        before is "+" or "-" or "\u2212"
            ? char.IsAsciiDigit(word[0])
            : char.IsAsciiDigit(before[^1]) && (IsFraction(word) || Units.Contains(Bare(word)))
                || Pairs.Contains((before, Bare(word)));

    private static string Bare(string word) => word.TrimEnd(',', ';', ':', '.', ')');

    private static bool IsFraction(string word)
    {
        int slash = word.IndexOf('/', StringComparison.Ordinal);
        return slash > 0
            && slash + 1 < word.Length
            && word[..slash].All(char.IsAsciiDigit)
            && char.IsAsciiDigit(word[slash + 1]);
    }
}
