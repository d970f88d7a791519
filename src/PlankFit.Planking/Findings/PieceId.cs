namespace PlankFit.Planking.Findings;

/// <summary>The name of what is sawn in one piece: a whole plank's, S1-07, or S1-07a, a piece of one, lettered from inboard.</summary>
/// <param name="Letter">Null for a whole plank.</param>
public readonly record struct PieceId(PlankId Plank, char? Letter)
{
    /// <summary>The same piece of the other side.</summary>
    public PieceId Twin => this with { Plank = Plank.Twin };

    public static PieceId Whole(PlankId plank) => new(plank, null);

    /// <summary>One of a plank's pieces, counted from 0 at the inboard end.</summary>
    public static PieceId Of(PlankId plank, int piece) => new(plank, (char)('a' + piece));

    /// <summary>The piece or whole plank that is named so, in capitals or not; null where the text names none.</summary>
    public static PieceId? Parse(string text)
    {
        char? letter = text is [.., >= '0' and <= '9', (>= 'a' and <= 'z') or (>= 'A' and <= 'Z')]
            ? char.ToLowerInvariant(text[^1])
            : null;
        string plank = letter is null ? text : text[..^1];
        return PlankId.Parse(plank.ToUpperInvariant()) is { } id ? new(id, letter) : null;
    }

    public override string ToString() => Letter is { } letter ? $"{Plank}{letter}" : $"{Plank}";
}

/// <summary>The name of a joint by the two pieces that meet in it: S1-07a/b.</summary>
/// <param name="Number">Counted from 0 at the inboard end.</param>
public readonly record struct JointId(PlankId Plank, int Number)
{
    public JointId Twin => this with { Plank = Plank.Twin };

    /// <summary>The letter of the piece inboard of it.</summary>
    public char Inboard => (char)('a' + Number);

    /// <summary>The letter of the piece outboard of it.</summary>
    public char Outboard => (char)('b' + Number);

    /// <summary>The two pieces by themselves: a/b.</summary>
    public string Pair => $"{Inboard}/{Outboard}";

    public override string ToString() => $"{Plank}{Pair}";
}

/// <summary>The name of a seam by the two planks that it lies between: S1-07/08.</summary>
/// <param name="After">Null where nothing lies aft of it.</param>
public readonly record struct SeamId(PlankId Forward, PlankId? After)
{
    public SeamId Twin => new(Forward.Twin, After?.Twin);

    public override string ToString() =>
        After is { } after ? $"{Forward}/{after.Padded}" : $"{Forward}";
}
