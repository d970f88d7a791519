using PlankFit.Planking.Units;

namespace PlankFit.Planking.Fairness;

/// <summary>A value as a cell of the table: whole 32nds in feet-inches-eighths, decimals of the unit to 0.01 mm or better elsewhere.</summary>
public static class TableText
{
    public static string Of(double mm, LengthUnit unit) =>
        unit switch
        {
            LengthUnit.FeetInchesEighths => LengthText.FeetInchesEighths(mm),
            LengthUnit.Millimetre => NumberText.Trimmed(mm, 2),
            LengthUnit.Centimetre => NumberText.Trimmed(mm / 10, 3),
            LengthUnit.Metre => NumberText.Trimmed(mm / 1000, 5),
            LengthUnit.Inch => NumberText.Trimmed(mm / LengthUnits.MmPer(unit), 5),
            _ => NumberText.Trimmed(mm / LengthUnits.MmPer(unit), 7),
        };
}
