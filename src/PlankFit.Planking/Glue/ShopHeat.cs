using PlankFit.Planking.Units;
using PlankFit.Planking.Wood;

namespace PlankFit.Planking.Glue;

/// <summary>Temperatures as people read them: Celsius, or Fahrenheit where lengths are in feet and inches.</summary>
public static class ShopHeat
{
    /// <summary>18.5 C; 65 F.</summary>
    public static string Words(double celsius, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? NumberText.Trimmed(celsius, 1) + " C"
            : NumberText.Trimmed(Moisture.Fahrenheit(celsius), 0) + " F";

    /// <summary>So much or more: up to the next whole degree Fahrenheit.</summary>
    public static string AtLeastApart(double celsius, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? Apart(celsius, unit)
            : NumberText.Trimmed(Math.Ceiling((celsius * 9 / 5) - 1e-9), 0) + " degrees F";

    /// <summary>By how much warmer or cooler: 1.5 degrees C; 3 degrees F.</summary>
    public static string Apart(double celsius, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? NumberText.Trimmed(celsius, 1) + " degrees C"
            : NumberText.Trimmed(celsius * 9 / 5, 0) + " degrees F";
}
