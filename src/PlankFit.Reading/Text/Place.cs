namespace PlankFit.Reading.Text;

/// <summary>Where in a text file; line and column count from 1.</summary>
public readonly record struct Place(string File, int Line, int Column)
{
    public override string ToString() =>
        FormattableString.Invariant($"{File}, line {Line}, column {Column}");
}
