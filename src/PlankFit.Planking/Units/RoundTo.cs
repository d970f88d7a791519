namespace PlankFit.Planking.Units;

/// <summary>How a length is brought to the marks of a rule.</summary>
public enum RoundTo
{
    /// <summary>To the nearest mark, a half away from zero.</summary>
    Nearest,

    /// <summary>To the next greater mark: for lengths to cut, which must never come out short.</summary>
    Up,
}
