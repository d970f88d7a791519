using PlankFit.Planking;

namespace PlankFit.Export;

/// <summary>Figures for setting up, as tables of data.</summary>
public static class SettingUpTables
{
    public static Table Frames(Job job, SettingUpPlan plan) =>
        TableOf.Build<(FrameSection Frame, FramePlace Place)>(
            "frames",
            [
                new("frame", 12, r => r.Frame.Name),
                new("at", 8, r => r.Place.Where),
                new("half-breadth", 12, r => Length(job, r.Place.HalfBreadthMm)),
                new("height", 12, r => Length(job, r.Place.HeightMm)),
                new("deduction", 12, r => Length(job, r.Place.DeductionMm)),
                new("bevel deg", 9, r => r.Place.BevelDegrees, 2),
                new("fall over the frame", 12, r => Length(job, r.Place.FallMm)),
                new("position mm", 11, r => r.Frame.PositionMm, 1),
                new("half-breadth mm", 11, r => r.Place.HalfBreadthMm, 2),
                new("height mm", 11, r => r.Place.HeightMm, 2),
                new("deduction mm", 11, r => r.Place.DeductionMm, 3),
                new("fall mm", 11, r => r.Place.FallMm, 3),
            ],
            plan.Frames.SelectMany(f => f.Places.Select(p => (f, p)))
        );

    public static Table Corners(Job job, SettingUpPlan plan) =>
        TableOf.Build<(CornerRow Row, TrimRow Trim)>(
            "chine",
            [
                new("station", 10, r => r.Row.Station),
                new("corner deg", 10, r => r.Row.CornerDegrees, 2),
                new("layer", 14, r => r.Trim.Layer),
                new("trim, inner face", 12, r => Length(job, r.Trim.InnerFaceMm)),
                new("trim, outer face", 12, r => Length(job, r.Trim.OuterFaceMm)),
                new("trim bevel deg", 10, r => r.Trim.BevelDegrees, 2),
                new("rounding begins", 12, r => Length(job, r.Row.TangentMm)),
                new("inner face mm", 11, r => r.Trim.InnerFaceMm, 3),
                new("outer face mm", 11, r => r.Trim.OuterFaceMm, 3),
                new("rounding mm", 11, r => r.Row.TangentMm, 3),
                new("off the corner mm", 11, r => r.Row.OffCornerMm, 3),
                new("seat mm", 11, r => r.Row.SeatMm, 3),
            ],
            plan.Corners.SelectMany(c => c.Trims.Select(t => (c, t)))
        );

    private static string Length(Job job, double mm) => LengthText.ForPaper(mm, job.Units);
}
