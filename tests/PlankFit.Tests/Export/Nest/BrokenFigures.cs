using System.Text.RegularExpressions;

namespace PlankFit.Tests.Export.Nest;

/// <summary>Figures that go on in the line below, judged by what is drawn alone: 11'-0 17/ and under it 32"; 11'-0 and under it 17/32"; 1234. and under it 5.</summary>
internal static class BrokenFigures
{
    private const double SameMm = 0.01;

    /// <summary>No text ends so, whatever follows it.</summary>
    private static readonly Regex Open = new(@"\d/$|['\d]-$|^[-\d.'/ ]*\d\.$");

    private static readonly Regex Fraction = new(@"^\d+/\d");
    private static readonly Regex Number = new(@"^[-\d.'/ ]*\d$");

    public static IEnumerable<string> In(Drawing sheet)
    {
        Lettering[] texts = [.. sheet.Shapes.OfType<Lettering>()];
        foreach (Lettering text in texts)
        {
            if (Open.IsMatch(text.Text))
            {
                yield return $"\"{text.Text}\" is broken off";
            }

            if (
                char.IsAsciiDigit(text.Text.LastOrDefault())
                && Below(text, texts) is { } below
                && (
                    Fraction.IsMatch(below.Text)
                    || (Number.IsMatch(text.Text) && Number.IsMatch(below.Text))
                )
            )
            {
                yield return $"\"{text.Text}\" goes on with \"{below.Text}\"";
            }
        }
    }

    /// <summary>The next line of the same cell or paragraph.</summary>
    private static Lettering? Below(Lettering text, Lettering[] texts) =>
        texts.FirstOrDefault(t =>
            t.Anchor == text.Anchor
            && Math.Abs(t.At.X - text.At.X) < SameMm
            && Math.Abs(text.At.Y - t.At.Y - (text.HeightMm * Letters.Leading)) < SameMm
        );
}
