using PlankFit.Planking.Units;

namespace PlankFit.Reading.Lengths;

/// <summary>Exact millimetres, or the fault.</summary>
internal readonly record struct LengthParts(decimal Mm, string? Fault)
{
    public static implicit operator LengthParts(decimal mm) => new(mm, null);

    public static implicit operator LengthParts(string fault) => new(0, fault);
}

/// <summary>The words of token kinds that are lengths, without their sign; <see cref="TokenKind"/> gives the letters.</summary>
internal static class LengthGrammar
{
    private const decimal Inch = 25.4m;
    private const decimal Foot = 304.8m;

    public static LengthParts Read(
        string word,
        ReadOnlySpan<LengthToken> t,
        LengthUnit units,
        bool eighthsOnly
    )
    {
        switch (word)
        {
            case "W-W-W":
            case "W-W-W+":
            case "W-W-W-":
            case "W-W-WF":
                return Eighths(word, t);
            case "W" or "N" when t[0].Value == 0:
                return 0m;
        }

        if (eighthsOnly)
        {
            return LengthFaults.NotEighths(word, t);
        }

        switch (word)
        {
            case "W" or "N" when units == LengthUnit.FeetInchesEighths:
                return LengthFaults.BareInEighths(t[0].Text);
            case "W" or "N":
                return t[0].Value * (decimal)LengthUnits.MmPer(units);
            case "Wu" or "Nu":
                return t[0].Value * t[1].Value;
            case "F" or "WF" or "W-F" when units == LengthUnit.Inch:
                return Inches(t);
            case "Wf" or "Nf" or "Ff" or "WFf":
                return Mixed(t[..^1], Foot);
        }

        return FeetAndInches(word, t);
    }

    /// <summary>Feet-inches-eighths; + and - are one sixteenth, a fraction is of an eighth.</summary>
    private static LengthParts Eighths(string word, ReadOnlySpan<LengthToken> t)
    {
        decimal feet = t[0].Value;
        decimal inches = t[2].Value;
        decimal eighths = t[4].Value;
        if (inches > 11)
        {
            return LengthFaults.InchesBeyond11(t[2].Text);
        }

        if (eighths > 7)
        {
            return LengthFaults.EighthsBeyond7(t[4].Text);
        }

        decimal over = 0;
        switch (word[^1])
        {
            case TokenKind.Plus:
                over = 0.5m;
                break;
            case TokenKind.Dash:
                over = -0.5m;
                break;
            case TokenKind.Fraction when t[5].Value is 0.25m or 0.5m or 0.75m:
                over = t[5].Value;
                break;
            case TokenKind.Fraction:
                return $"has {t[5].Text} of an eighth: 1/4, 1/2 or 3/4 of an eighth go there";
        }

        decimal all = ((feet * 12) + inches + ((eighths + over) / 8)) * Inch;
        return all < 0
            ? "is less than nothing: for below the base put the minus in front, as in -0-0-0+"
            : all;
    }

    private static LengthParts FeetAndInches(string word, ReadOnlySpan<LengthToken> t)
    {
        // Feet stand in front where there is a foot mark: whole feet, the mark, perhaps a dash, then the inches.
        bool feet = word.StartsWith("Wf", StringComparison.Ordinal);
        int skip =
            !feet ? 0
            : word.StartsWith("Wf-", StringComparison.Ordinal) ? 3
            : 2;
        ReadOnlySpan<LengthToken> rest = t[skip..];
        switch (word[skip..])
        {
            case "Wi" or "Ni" or "Fi" or "WFi" or "W-Fi":
                break;
            case "W" or "N" or "F" or "WF" or "W-F" when feet:
                return "has inches without their mark: end them with \" or in";
            default:
                return LengthFaults.Explain(word, t);
        }

        LengthParts inches = Mixed(rest[..^1], Inch);
        if (!feet || inches.Fault is not null)
        {
            return inches;
        }

        return inches.Mm >= Foot
            ? "has 12 inches or more after the feet: inches go from 0 to less than 12 there"
            : (t[0].Value * Foot) + inches.Mm;
    }

    private static LengthParts Inches(ReadOnlySpan<LengthToken> t) => Mixed(t, Inch);

    /// <summary>A whole, a decimal, a fraction, or a whole and a proper fraction, of a unit.</summary>
    private static LengthParts Mixed(ReadOnlySpan<LengthToken> t, decimal unit)
    {
        if (t.Length == 1)
        {
            return t[0].Value * unit;
        }

        LengthToken fraction = t[^1];
        return fraction.Value >= 1
            ? $"has {fraction.Text} after a whole number: a fraction there is less than 1"
            : (t[0].Value + fraction.Value) * unit;
    }
}
