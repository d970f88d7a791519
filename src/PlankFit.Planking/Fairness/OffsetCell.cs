namespace PlankFit.Planking.Fairness;

/// <summary>Where a value stands in the table of offsets.</summary>
/// <param name="Station">The station's name.</param>
/// <param name="StationIndex">Its place in the table.</param>
public readonly record struct OffsetCell(
    string Line,
    Measure Measure,
    string Station,
    int StationIndex
);
