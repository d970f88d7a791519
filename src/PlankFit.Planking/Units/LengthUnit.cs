namespace PlankFit.Planking.Units;

/// <summary>The units a job is written in. Inside the program every length is in millimetres.</summary>
public enum LengthUnit
{
    Millimetre,
    Centimetre,
    Metre,
    Inch,
    Foot,

    /// <summary>Feet-inches-eighths as a loftsman writes them: 5-4-6+.</summary>
    FeetInchesEighths,
}
