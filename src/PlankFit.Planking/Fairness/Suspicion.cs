namespace PlankFit.Planking;

/// <summary>A cell of the table that does not lie fair, and what may have happened to it.</summary>
/// <param name="Station">The station's name.</param>
/// <param name="StationIndex">Its place in the table.</param>
/// <param name="ResidualMm">How far the value stands beyond what its neighbours foretell; positive outboard or above.</param>
/// <param name="ForetoldMm">The value that its neighbours foretell: a hint to check against, never a value to saw to.</param>
/// <param name="Severity">The part of the row's unfairness that would go with this one value, 0 to 1.</param>
/// <param name="Cause">The likeliest slip, as a question: "3/8 in misread?"; null where none fits.</param>
public sealed record Suspicion(
    string Line,
    Measure Measure,
    string Station,
    int StationIndex,
    double ResidualMm,
    double ForetoldMm,
    double Severity,
    string? Cause
)
{
    /// <summary>"station 5, chine half-breadth".</summary>
    public string Where => $"station {Station}, {Line} {OffsetRow.Word(Measure)}";

    /// <summary>"9.6 mm outside the run of its neighbours; 3/8 in misread?", with inches where the job is in inches.</summary>
    public string Message(LengthUnit unit) =>
        Cause is null ? Stands(unit) : $"{Stands(unit)}; {Cause}";

    /// <summary>"9.6 mm outside the run of its neighbours".</summary>
    public string Stands(LengthUnit unit)
    {
        string side = (Measure, ResidualMm > 0) switch
        {
            (Measure.Height, true) => "above",
            (Measure.Height, false) => "below",
            (Measure.HalfBreadth, true) => "outside",
            _ => "inside",
        };
        return $"{Amount(Math.Abs(ResidualMm), unit)} {side} the run of its neighbours";
    }

    public Finding ToFinding(LengthUnit unit) =>
        new(PlankFit.Planking.Severity.Warning, Where, Message(unit));

    private static string Amount(double mm, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? NumberText.Trimmed(mm, 1) + " mm"
            : $"{LengthText.ForPaper(mm, LengthUnit.Inch)} ({NumberText.Trimmed(mm, 1)} mm)";
}
