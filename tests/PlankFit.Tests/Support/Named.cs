using PlankFit.Planking.Findings;

namespace PlankFit.Tests.Support;

/// <summary>Names as tests write them, as values.</summary>
internal static class Named
{
    public static PlankId Plank(string name) =>
        PlankId.Parse(name) ?? throw new FormatException($"{name} names no plank");

    /// <summary>A whole plank, S1-07, or a piece of one, S1-07a.</summary>
    public static PieceId Piece(string name) =>
        name is [.. string plank, >= 'a' and <= 'z' and char letter]
            ? new(Plank(plank), letter)
            : PieceId.Whole(Plank(name));
}
