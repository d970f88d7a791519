namespace PlankFit.Planking.Units;

/// <summary>What each unit is worth and what it is called in the job file. The inch is 25.4 mm exactly (international yard and pound, 1959).</summary>
public static class LengthUnits
{
    public const double MmPerInch = 25.4;
    public const double MmPerFoot = 304.8;

    /// <summary>The names that `units` takes in the job file, in the order in which they are listed to a reader.</summary>
    public const string Accepted = "mm, cm, m, in, ft, ft-in-8";

    /// <summary>Millimetres in one unit; for feet-inches-eighths, in one foot.</summary>
    public static double MmPer(LengthUnit unit) =>
        unit switch
        {
            LengthUnit.Millimetre => 1,
            LengthUnit.Centimetre => 10,
            LengthUnit.Metre => 1000,
            LengthUnit.Inch => MmPerInch,
            _ => MmPerFoot,
        };

    /// <summary>The unit as the job file writes it.</summary>
    public static string Name(LengthUnit unit) =>
        unit switch
        {
            LengthUnit.Millimetre => "mm",
            LengthUnit.Centimetre => "cm",
            LengthUnit.Metre => "m",
            LengthUnit.Inch => "in",
            LengthUnit.Foot => "ft",
            _ => "ft-in-8",
        };

    /// <summary>The unit of that name, or null.</summary>
    public static LengthUnit? Find(string name) =>
        name switch
        {
            "mm" => LengthUnit.Millimetre,
            "cm" => LengthUnit.Centimetre,
            "m" => LengthUnit.Metre,
            "in" => LengthUnit.Inch,
            "ft" => LengthUnit.Foot,
            "ft-in-8" => LengthUnit.FeetInchesEighths,
            _ => null,
        };

    public static bool IsMetric(LengthUnit unit) =>
        unit is LengthUnit.Millimetre or LengthUnit.Centimetre or LengthUnit.Metre;
}
