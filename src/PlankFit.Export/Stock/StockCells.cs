using PlankFit.Planking.Units;

namespace PlankFit.Export.Stock;

/// <summary>Lengths as stock.csv wants them back.</summary>
internal static class StockCells
{
    /// <summary>As it was read: to a quarter of an eighth where the job is in eighths.</summary>
    public static string Thickness(double mm, LengthUnit unit)
    {
        if (unit != LengthUnit.FeetInchesEighths)
        {
            return NumberText.Trimmed(mm / LengthUnits.MmPer(unit), 5);
        }

        long quarters = (long)Math.Round(mm / 25.4 * 32);
        string part = (quarters % 4) switch
        {
            1 => " 1/4",
            2 => " 1/2",
            3 => " 3/4",
            _ => "",
        };
        return FormattableString.Invariant(
            $"{quarters / 384}-{quarters / 32 % 12}-{quarters / 4 % 8}{part}"
        );
    }

    /// <summary>Rounded down: to a tenth of a millimetre, a thousandth of an inch, or an eighth of an inch where the job is in eighths.</summary>
    public static string Length(double mm, LengthUnit unit)
    {
        if (unit == LengthUnit.FeetInchesEighths)
        {
            long eighths = (long)Math.Floor((mm / 25.4 * 8) + 1e-6);
            return FormattableString.Invariant($"{eighths / 96}-{eighths / 8 % 12}-{eighths % 8}");
        }

        double per = LengthUnits.MmPer(unit),
            step = LengthUnits.IsMetric(unit) ? 0.1 / per : 0.001;
        return NumberText.Trimmed(Math.Floor((mm / per / step) + 1e-6) * step, 5);
    }
}
