using System.Text;

namespace PlankFit.Reading;

/// <summary>Text as written, fit to stand in a message: short, on one line, control characters shown.</summary>
public static class Quoted
{
    private const int Longest = 60;

    public static string Of(string text)
    {
        var shown = new StringBuilder(text.Length + 2).Append('"');
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (shown.Length > Longest)
            {
                shown.Append('…');
                break;
            }

            if (Rune.IsControl(rune))
            {
                shown.Append('␦');
            }
            else
            {
                shown.Append(rune.ToString());
            }
        }

        return shown.Append('"').ToString();
    }
}
