namespace PlankFit.Planking.Taping;

/// <summary>Where a seam crosses keel and chine, on the face that its layer lies on: distances along each from a station, mm, aft positive.</summary>
public sealed record SeamMarks(string From, double AlongKeelMm, double AlongChineMm);

/// <summary>A seam that is taped from mark to mark.</summary>
/// <param name="FaceMm">Of the face that its layer lies on, from the table's surface outward.</param>
/// <param name="DrawnMm">What a tape reads there on the hull as drawn.</param>
/// <param name="MarksSigmaMm">What the reading is out by, one standard deviation, because its ends are not quite at the marks: 0 where these were set out or measured.</param>
public sealed record TapedSeamPlace(
    SeamMarks Marks,
    double FaceMm,
    double DrawnMm,
    double MarksSigmaMm
)
{
    /// <summary>Its plank is one of those laid on the frames as taped, where the table has others.</summary>
    public bool IsAsTaped { get; init; }
}
