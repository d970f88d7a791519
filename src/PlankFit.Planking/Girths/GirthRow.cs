namespace PlankFit.Planking.Girths;

/// <summary>The girth of one station on the planking's inner face, mm.</summary>
/// <param name="DrawnMm">As the table gives it.</param>
/// <param name="NowMm">As corrected.</param>
/// <param name="MeasuredMm">Null where it was not measured.</param>
public sealed record GirthRow(
    string Station,
    double PositionMm,
    double DrawnMm,
    double NowMm,
    double? MeasuredMm
)
{
    public double MovedMm => NowMm - DrawnMm;
}
