using System.Globalization;

namespace PlankFit.Reading.Tables;

/// <summary>A number with its unit in one text: "540 kg/m3", "1.95 Mpsi", "20 C".</summary>
internal static class Quantity
{
    /// <summary>The number and what its unit is worth, or null where it is neither.</summary>
    public static (double Number, double Factor)? Read(
        string text,
        IReadOnlyList<(string Unit, double Factor)> units
    )
    {
        string trimmed = text.Trim();
        foreach ((string unit, double factor) in units.OrderByDescending(u => u.Unit.Length))
        {
            if (
                trimmed.EndsWith(unit, StringComparison.Ordinal)
                && double.TryParse(
                    trimmed[..^unit.Length].TrimEnd(),
                    NumberStyles.AllowLeadingSign
                        | NumberStyles.AllowDecimalPoint
                        | NumberStyles.AllowExponent,
                    CultureInfo.InvariantCulture,
                    out double number
                )
                && double.IsFinite(number)
            )
            {
                return (number, factor);
            }
        }

        return null;
    }
}
