namespace PlankFit.Reading.Lengths;

/// <summary>
/// The kinds of a length's tokens, one letter each, so that a whole length is a word of them and the grammar can be read as a list of words:
/// 5'-4 3/4" is <c>Wf-WFi</c>.
/// </summary>
internal static class TokenKind
{
    public const char Whole = 'W';
    public const char Decimal = 'N';
    public const char Fraction = 'F';
    public const char Dash = '-';
    public const char Plus = '+';
    public const char FootMark = 'f';
    public const char InchMark = 'i';
    public const char MetricUnit = 'u';
    public const char Comma = ',';

    /// <summary>Anything that no length has; the token's text says what.</summary>
    public const char Stranger = 'x';
}

/// <summary>One token. The value is exact: a whole number, a decimal, or a fraction whose denominator is a power of two; for a unit, mm in one.</summary>
/// <param name="Numerator">Of a fraction; DenominatorText goes with it.</param>
internal readonly record struct LengthToken(
    char Kind,
    string Text,
    decimal Value,
    int Numerator = 0,
    int Denominator = 1
);
