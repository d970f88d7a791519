using System.Globalization;
using System.Text.RegularExpressions;

namespace PlankFit.Planking.Findings;

/// <summary>
/// A plank's name: S1-07 is starboard, layer 1, the seventh from forward, of the bottom; a plank of another panel has the panel's letter after the side, ST1-07. Where
/// sawn planks keep their numbers and more are laid ahead of them than there are numbers for, those ahead of 00 are A1, A2 and so on, going forward: minus one, minus
/// two.
/// </summary>
/// <param name="Panel">The panel's letter; empty for the bottom.</param>
/// <param name="Layer">Counts the panel's layers of planks from 1, from the inside out.</param>
public readonly partial record struct PlankId(Side Side, string Panel, int Layer, int Number)
    : IComparable<PlankId>
{
    /// <summary>The panel of planks that are named without one.</summary>
    public const string Bottom = "";

    public static PlankId OfBottom(Side side, int layer, int number) =>
        new(side, Bottom, layer, number);

    /// <summary>The number by itself: 7, or A1.</summary>
    public string Short => ShortOf(Number);

    /// <summary>The number as the name has it: 07, or A1.</summary>
    public string Padded =>
        Number < 0 ? Short : Number.ToString("00", CultureInfo.InvariantCulture);

    /// <summary>The same plank of the other side.</summary>
    public PlankId Twin => this with { Side = Side == Side.Starboard ? Side.Port : Side.Starboard };

    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{(Side == Side.Starboard ? 'S' : 'P')}{Panel}{Layer}-{Padded}"
        );

    /// <summary>A number of a plank or a seam by itself: 7, or A1.</summary>
    public static string ShortOf(int number) =>
        number < 0
            ? string.Create(CultureInfo.InvariantCulture, $"A{-number}")
            : number.ToString(CultureInfo.InvariantCulture);

    /// <summary>The plank that is named so; null where the text names none.</summary>
    public static PlankId? Parse(string text) =>
        One().Match(text) is { Success: true } m
            ? new(
                m.Groups["side"].Value == "S" ? Side.Starboard : Side.Port,
                m.Groups["panel"].Value,
                int.Parse(m.Groups["layer"].ValueSpan, CultureInfo.InvariantCulture),
                m.Groups["number"].ValueSpan is ['A', .. ReadOnlySpan<char> ahead]
                    ? -int.Parse(ahead, NumberStyles.None, CultureInfo.InvariantCulture)
                    : int.Parse(
                        m.Groups["number"].ValueSpan,
                        NumberStyles.None,
                        CultureInfo.InvariantCulture
                    )
            )
            : null;

    /// <summary>By side, panel, layer and number: as lists go.</summary>
    public int CompareTo(PlankId other) =>
        (Side, Panel, Layer, Number).CompareTo(
            (other.Side, other.Panel, other.Layer, other.Number)
        );

    [GeneratedRegex(
        @"^(?<side>[SP])(?<panel>[A-Z]?)(?<layer>[1-9][0-9]{0,2})-(?<number>[0-9]{2}|[1-9][0-9]{2,4}|A[1-9][0-9]{0,3})\z",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex One();
}
