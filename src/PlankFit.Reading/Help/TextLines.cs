namespace PlankFit.Reading.Help;

/// <summary>A text broken at its blanks.</summary>
public static class TextLines
{
    public static IEnumerable<string> Of(string text, int width)
    {
        string line = "";
        foreach (string word in text.Split(' '))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                yield return line;
                line = "";
            }

            line = line.Length == 0 ? word : $"{line} {word}";
        }

        yield return line;
    }
}
