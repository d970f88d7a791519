using System.Text;

namespace PlankFit.Tests.Reading.Fuzz;

/// <summary>Spoils a text at random: bytes flipped, tokens swapped for others valid and nasty, lines dropped, doubled and moved, the text cut short. Seeded.</summary>
internal sealed class Mutator(int seed, string[] tokens)
{
    private readonly Random random = new(seed);

    /// <summary>The bytes of the text with one to five spoilings; they need not be UTF-8 any more.</summary>
    public byte[] Spoil(string text)
    {
        // Half of the inputs are spoiled once: the deeper checks are reached only by what is nearly sound.
        int times = random.Next(2) == 0 ? 1 : 2 + random.Next(4);
        for (int i = 0; i < times; i++)
        {
            text = random.Next(16) switch
            {
                0 or 1 => DropLine(text),
                2 or 3 => DoubleLine(text),
                4 or 5 => SwapLines(text),
                6 => text[..random.Next(text.Length + 1)],
                _ => SwapToken(text),
            };
        }

        byte[] bytes = Encoding.UTF8.GetBytes(text);
        if (random.Next(3) == 0 && bytes.Length > 0)
        {
            for (int flips = 1 + random.Next(4); flips > 0; flips--)
            {
                bytes[random.Next(bytes.Length)] ^= (byte)(1 << random.Next(8));
            }
        }

        return bytes;
    }

    /// <summary>Puts a token in place of a run of letters and digits, of a single character, or of nothing.</summary>
    private string SwapToken(string text)
    {
        string token = tokens[random.Next(tokens.Length)];
        int at = random.Next(text.Length + 1);
        int end = at;
        switch (random.Next(3))
        {
            case 0:
                while (at > 0 && IsWord(text[at - 1]))
                {
                    at--;
                }

                while (end < text.Length && IsWord(text[end]))
                {
                    end++;
                }

                break;
            case 1:
                end = Math.Min(text.Length, at + 1);
                break;
        }

        return text[..at] + token + text[end..];
    }

    private static bool IsWord(char c) => char.IsLetterOrDigit(c) || c is '-' or '.' or '_';

    private string DropLine(string text)
    {
        List<string> lines = [.. text.Split('\n')];
        lines.RemoveAt(random.Next(lines.Count));
        return string.Join('\n', lines);
    }

    private string DoubleLine(string text)
    {
        List<string> lines = [.. text.Split('\n')];
        string line = lines[random.Next(lines.Count)];
        lines.Insert(random.Next(lines.Count + 1), line);
        return string.Join('\n', lines);
    }

    private string SwapLines(string text)
    {
        string[] lines = text.Split('\n');
        int a = random.Next(lines.Length),
            b = random.Next(lines.Length);
        (lines[a], lines[b]) = (lines[b], lines[a]);
        return string.Join('\n', lines);
    }
}
