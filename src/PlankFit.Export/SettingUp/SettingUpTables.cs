using PlankFit.Export.Tables;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.SettingUp;

/// <summary>Setting up as tables of data: millimetres and degrees, unrounded, beside the builder's own figures.</summary>
public static class SettingUpTables
{
    /// <summary>One row a section and place of its edge.</summary>
    public static Table Frames(Job job, SettingUpPlan plan) =>
        TableOf.Build<(FrameSection S, int I, FramePlace P)>(
            "frames",
            [
                new("section", 12, r => SettingUpWords.Listed(r.S)),
                new(
                    "kind",
                    10,
                    r =>
                        r.S.IsTransom ? "transom"
                        : r.S.IsStation ? "station"
                        : "frame"
                ),
                new("place", 10, r => SettingUpWords.Place(r.S, r.I).Long),
                new("face on its line", 12, r => SettingUpWords.Face(r.S.Face)),
                new("deduction", 12, r => LengthText.ForPaper(r.P.DeductionMm, job.Units)),
                new("bevel", 14, r => SettingUpWords.Bevel(r.P.BevelDegrees)),
                new("fall", 12, r => LengthText.ForPaper(Math.Abs(r.P.FallMm), job.Units)),
                new("position mm", 12, r => r.S.PositionMm, 3),
                new("rake deg", 10, r => r.S.RakeDegrees, 3),
                new("thickness mm", 12, r => r.S.ThicknessMm, 3),
                new("deduction mm", 12, r => r.P.DeductionMm, 3),
                new("bevel deg (under +)", 12, r => r.P.BevelDegrees, 3),
                new("fall mm (under +)", 12, r => r.P.FallMm, 3),
                new("mould half-breadth mm", 12, r => r.P.Mould.X, 3),
                new("mould height mm", 12, r => r.P.Mould.Y, 3),
            ],
            plan.Sections.SelectMany(s => s.Places.Select((p, i) => (s, i, p)))
        );

    /// <summary>One row a section: where its mould line begins and ends.</summary>
    public static Table Moulds(Job job, SettingUpPlan plan) =>
        TableOf.Build<FrameSection>(
            "moulds",
            [
                new("section", 12, s => SettingUpWords.Listed(s)),
                new("at keel, half-breadth", 14, s => LengthText.ForPaper(s.KeelEnd.X, job.Units)),
                new("at keel, height", 14, s => LengthText.ForPaper(s.KeelEnd.Y, job.Units)),
                new(
                    "at chine, half-breadth",
                    14,
                    s => LengthText.ForPaper(s.ChineEnd.X, job.Units)
                ),
                new("at chine, height", 14, s => LengthText.ForPaper(s.ChineEnd.Y, job.Units)),
                new("at keel, half-breadth mm", 12, s => s.KeelEnd.X, 3),
                new("at keel, height mm", 12, s => s.KeelEnd.Y, 3),
                new("at chine, half-breadth mm", 12, s => s.ChineEnd.X, 3),
                new("at chine, height mm", 12, s => s.ChineEnd.Y, 3),
            ],
            plan.Sections
        );

    public static Table Rabbet(Job job, SettingUpPlan plan) =>
        TableOf.Build<RabbetPlace>(
            "rabbet",
            [
                new("section", 12, r => r.Section),
                new("rabbet line, height", 14, r => LengthText.ForPaper(r.RabbetLine.Y, job.Units)),
                new("middle, height", 14, r => LengthText.ForPaper(r.Middle.Y, job.Units)),
                new(
                    "bearding, height",
                    14,
                    r => r.Bearding is { } b ? LengthText.ForPaper(b.Y, job.Units) : null
                ),
                new("position mm", 12, r => r.PositionMm, 3),
                new("rabbet line half-breadth mm", 12, r => r.RabbetLine.X, 3),
                new("rabbet line height mm", 12, r => r.RabbetLine.Y, 3),
                new("middle half-breadth mm", 12, r => r.Middle.X, 3),
                new("middle height mm", 12, r => r.Middle.Y, 3),
                new("bearding half-breadth mm", 12, r => r.Bearding?.X, 3),
                new("bearding height mm", 12, r => r.Bearding?.Y, 3),
                new("depth mm", 12, r => r.DepthMm, 3),
                new("landing mm", 12, r => r.LandingMm, 3),
                new("landing slope deg", 12, r => r.LandingDegrees, 3),
            ],
            plan.Rabbet
        );

    public static Table Stringers(Job job, SettingUpPlan plan) =>
        TableOf.Build<StringerPlace>(
            "stringers",
            [
                new("stringer", 16, s => s.Stringer),
                new("section", 12, s => s.Section),
                new("half-breadth", 14, s => LengthText.ForPaper(s.Centre.X, job.Units)),
                new("height", 14, s => LengthText.ForPaper(s.Centre.Y, job.Units)),
                new("fall", 12, s => LengthText.ForPaper(Math.Abs(s.FallMm), job.Units)),
                new("position mm", 12, s => s.PositionMm, 3),
                new("half-breadth mm", 12, s => s.Centre.X, 3),
                new("height mm", 12, s => s.Centre.Y, 3),
                new("bevel deg (outboard edge higher +)", 12, s => s.BevelDegrees, 3),
                new("fall mm", 12, s => s.FallMm, 3),
                new("across the frame deg (outboard going aft +)", 12, s => s.CrossDegrees, 3),
            ],
            plan.Stringers
        );

    public static Table Chine(Job job, SettingUpPlan plan) =>
        TableOf.Build<ChinePlace>(
            "chine",
            [
                new("section", 12, c => c.Section),
                new("the skins", 18, c => SettingUpWords.Meeting(plan.Spec, c)),
                new(
                    "trim, outer face",
                    14,
                    c => SettingUpWords.Signed(c.Corner.Trim.OuterMm, job.Units)
                ),
                new(
                    "trim, inner face",
                    14,
                    c => SettingUpWords.Signed(c.Corner.Trim.InnerMm, job.Units)
                ),
                new("end bevel", 22, c => SettingUpWords.PlankEnd(c.Corner.TrimBevelDegrees)),
                new("position mm", 12, c => c.PositionMm, 3),
                new("deadrise deg", 12, c => c.DeadriseDegrees, 3),
                new("topside off plumb deg", 12, c => c.FlareDegrees, 3),
                new("corner deg", 12, c => c.Corner.CornerDegrees, 3),
                new("trim outer mm", 12, c => c.Corner.Trim.OuterMm, 3),
                new("trim inner mm", 12, c => c.Corner.Trim.InnerMm, 3),
                new("end bevel deg (outer face longer +)", 12, c => c.Corner.TrimBevelDegrees, 3),
                new("round begins mm", 12, c => c.Corner.Rounded.TangentMm, 3),
                new("round off the edge mm", 12, c => c.Corner.Rounded.OffMm, 3),
                new("piece inner face along bottom mm", 12, c => c.Corner.PieceInner?.BottomMm, 3),
                new("piece inner face up topside mm", 12, c => c.Corner.PieceInner?.UpMm, 3),
            ],
            plan.Chine
        );
}
