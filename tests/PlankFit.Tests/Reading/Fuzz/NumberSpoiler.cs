using System.Globalization;
using System.Text.RegularExpressions;

namespace PlankFit.Tests.Reading.Fuzz;

/// <summary>Changes one or two numbers of a text, by a little or by a lot: most texts stay readable, so that what comes after the reader is tried. Seeded.</summary>
internal sealed partial class NumberSpoiler(int seed)
{
    private static readonly double[] Factors =
    [
        0,
        -1,
        0.001,
        0.1,
        0.5,
        0.9,
        0.999,
        1.001,
        1.02,
        1.1,
        1.5,
        2,
        10,
        1000,
    ];

    private readonly Random random = new(seed);

    public string Spoil(string text)
    {
        for (int times = 1 + random.Next(2); times > 0; times--)
        {
            MatchCollection numbers = Number().Matches(text);
            if (numbers.Count == 0)
            {
                return text;
            }

            Match at = numbers[random.Next(numbers.Count)];
            double value =
                double.Parse(at.Value, CultureInfo.InvariantCulture)
                * Factors[random.Next(Factors.Length)];
            text =
                text[..at.Index]
                + value.ToString("0.######", CultureInfo.InvariantCulture)
                + text[(at.Index + at.Length)..];
        }

        return text;
    }

    [GeneratedRegex("(?<![A-Za-z0-9.\"-])[0-9]+([.][0-9]+)?(?![A-Za-z0-9.\"])")]
    private static partial Regex Number();
}
