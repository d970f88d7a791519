using PlankFit.Planking.Units;

namespace PlankFit.Tests.Support.Chance;

/// <summary>Draws by one seed, with lengths written as a builder writes them in the job's units.</summary>
internal sealed class Draw(int seed)
{
    private static readonly LengthUnit[] Units =
    [
        LengthUnit.Millimetre,
        LengthUnit.FeetInchesEighths,
        LengthUnit.Inch,
        LengthUnit.Centimetre,
        LengthUnit.Foot,
        LengthUnit.Metre,
    ];
    private readonly Random chance = new(seed);

    public LengthUnit Unit { get; } = Units[seed % Units.Length];

    public bool Heads(double odds = 0.5) => chance.NextDouble() < odds;

    public double Between(double low, double high) => low + ((high - low) * chance.NextDouble());

    /// <summary>From <paramref name="low"/> to <paramref name="high"/>, both included.</summary>
    public int Whole(int low, int high) => chance.Next(low, high + 1);

    public T OneOf<T>(params T[] those) => those[chance.Next(those.Length)];

    /// <summary>As it stands in a cell of a table: no quotes.</summary>
    public string Cell(double mm) =>
        Unit == LengthUnit.FeetInchesEighths
            ? LengthText.FeetInchesEighths(mm)
            : NumberText.Trimmed(mm / LengthUnits.MmPer(Unit), Unit == LengthUnit.Metre ? 5 : 3);

    /// <summary>As it stands in job.toml.</summary>
    public string Value(double mm) =>
        Unit == LengthUnit.FeetInchesEighths ? $"\"{Cell(mm)}\"" : Cell(mm);
}
