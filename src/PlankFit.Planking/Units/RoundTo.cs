namespace PlankFit.Planking.Units;

/// <summary>How a length is brought to the marks of a rule.</summary>
public enum RoundTo
{
    /// <summary>To the nearest mark, a half away from zero.</summary>
    Nearest,

    /// <summary>To the next greater mark: for lengths to cut, which must never come out short, and for least distances.</summary>
    Up,

    /// <summary>To the next lesser mark: for what must not be passed, and for what is kept of a least distance.</summary>
    Down,
}
