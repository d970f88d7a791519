using PlankFit.Planking.Findings;

namespace PlankFit.Reading.Text;

/// <summary>Text as written, fit to stand in a message: short, on one line, what cannot be seen as its code.</summary>
public static class Quoted
{
    private const int Longest = 60;

    public static string Of(string text) => $"\"{Short(text)}\"";

    /// <summary>The same without the quotation marks.</summary>
    public static string Short(string text)
    {
        int end = Math.Min(text.Length, Longest);
        if (end < text.Length && char.IsHighSurrogate(text[end - 1]))
        {
            end--;
        }

        return PlainText.Of(text[..end]) + (end < text.Length ? "…" : "");
    }
}
