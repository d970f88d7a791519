namespace PlankFit.Draughting.Layout;

/// <summary>Heights of lettering (capitals, mm) and the breaking of text into lines.</summary>
public static class Letters
{
    /// <summary>What is read in passing; the smallest on any sheet.</summary>
    public const double Small = 1.8;

    /// <summary>Numbers that are read at the bench.</summary>
    public const double Bench = 2.5;

    public const double Heading = 3.5;
    public const double Name = 5;

    /// <summary>Baseline to baseline, in heights of capitals.</summary>
    public const double Leading = 1.75;

    public static double Width(string text, double height, bool bold = false) =>
        LetterWidths.TextWidth(text, height, bold);

    /// <summary>
    /// The text broken at spaces into lines no wider than the width, never within a figure; a word that is wider by itself is broken after a hyphen or a stroke,
    /// and within its letters only where there is none.
    /// </summary>
    public static IReadOnlyList<string> Wrap(
        string text,
        double height,
        double widthMm,
        bool bold = false
    )
    {
        List<string> lines = [];
        string line = "";
        foreach (string given in Figures.Words(text))
        {
            string word = given;
            if (line.Length > 0 && Width(line + " " + word, height, bold) <= widthMm)
            {
                line += " " + word;
                continue;
            }

            if (line.Length > 0)
            {
                lines.Add(line);
            }

            while (word.Length > 1 && Width(word, height, bold) > widthMm)
            {
                int fits = Fitting(word, height, widthMm, bold);
                int joint = word.LastIndexOfAny(['-', '/'], fits - 1, fits - 1) + 1;
                fits = joint > 1 ? joint : fits;
                lines.Add(word[..fits]);
                word = word[fits..];
            }

            line = word;
        }

        if (line.Length > 0)
        {
            lines.Add(line);
        }

        return lines;
    }

    /// <summary>Of the words that <see cref="Wrap"/> keeps whole the widest, mm; 0 where there is none.</summary>
    public static double WidestWord(string text, double height, bool bold = false) =>
        Figures.Words(text).Select(w => Width(w, height, bold)).DefaultIfEmpty().Max();

    /// <summary>The text, or its beginning and three dots where it is wider: for names that somebody else chose.</summary>
    public static string Shortened(string text, double height, double widthMm, bool bold = false)
    {
        string shown = LetterWidths.Drawable(text, bold);
        if (Width(shown, height, bold) <= widthMm)
        {
            return shown;
        }

        while (shown.Length > 1 && Width(shown + "...", height, bold) > widthMm)
        {
            shown = shown[..^1];
        }

        return shown.TrimEnd() + "...";
    }

    private static int Fitting(string word, double height, double widthMm, bool bold)
    {
        int fits = 1;
        while (fits < word.Length && Width(word[..(fits + 1)], height, bold) <= widthMm)
        {
            fits++;
        }

        return fits;
    }
}
