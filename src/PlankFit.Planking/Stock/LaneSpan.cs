namespace PlankFit.Planking.Stock;

/// <summary>From where to where something reaches along a board, mm in the frame of <see cref="BoardFrame"/>.</summary>
internal readonly record struct LaneSpan(double FromMm, double ToMm)
{
    /// <summary>As long as its stock.</summary>
    public static LaneSpan Of(BoardFrame frame) => new(0, frame.LengthMm);
}
