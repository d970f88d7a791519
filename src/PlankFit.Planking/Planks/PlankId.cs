using System.Globalization;

namespace PlankFit.Planking;

/// <summary>
/// Planks by id: side, layer, number from forward, S1-07. Where sawn planks keep their numbers and more are laid ahead of them than there are numbers for, those
/// ahead of 00 are A1, A2 and so on, going forward: minus one, minus two.
/// </summary>
public static class PlankId
{
    public static string Of(Side side, int layer, int number) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{(side == Side.Starboard ? 'S' : 'P')}{layer}-{(number < 0 ? Short(number) : $"{number:00}")}"
        );

    /// <summary>A number by itself: 7, or A1.</summary>
    public static string Short(int number) =>
        number < 0
            ? string.Create(CultureInfo.InvariantCulture, $"A{-number}")
            : number.ToString(CultureInfo.InvariantCulture);

    /// <summary>The number that the last part of an id is.</summary>
    public static int Number(ReadOnlySpan<char> text) =>
        text is ['A', .. ReadOnlySpan<char> ahead]
            ? -int.Parse(ahead, NumberStyles.None, CultureInfo.InvariantCulture)
            : int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture);
}
