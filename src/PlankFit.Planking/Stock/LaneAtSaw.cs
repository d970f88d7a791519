namespace PlankFit.Planking.Stock;

/// <summary>A lane as it lies at the saw, ripped free.</summary>
/// <param name="Frame">Its board's, from where the lane begins to where it ends.</param>
/// <param name="Number">Of the lane in its board, from 0.</param>
/// <param name="KerfMm">What the saw takes; <paramref name="Tolerances"/> is what it is trusted with.</param>
internal readonly record struct LaneAtSaw(
    BoardFrame Frame,
    SawnLane Lane,
    int Number,
    double KerfMm,
    SawTolerances Tolerances
)
{
    public static LaneAtSaw Of(BoardFrame frame, SawnLane lane, int number, NestSpec spec) =>
        new(frame, lane, number, spec.KerfMm, spec.Saw);
}
