namespace PlankFit.Reading.Lengths;

/// <summary>A length as read: its millimetres, or what is wrong with the text (a half sentence that follows the text as written).</summary>
public readonly record struct LengthReading(double Mm, string? Fault)
{
    public bool Ok => Fault is null;

    public static LengthReading Of(double mm) => new(mm, null);

    public static LengthReading Wrong(string fault) => new(0, fault);
}
