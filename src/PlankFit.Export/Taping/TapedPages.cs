using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Taping;

/// <summary>What the tape said, reading by reading, and what it made of the table.</summary>
public static class TapedPages
{
    public static ImmutableArray<Drawing> Of(BottomPlan plan, TapedHull taped) =>
        SheetPage.Numbered(
            plan.Job,
            [.. Readings(plan, taped).Pages(plan.Job), .. Cells(plan, taped).Pages(plan.Job)]
        );

    private static TitleBlock Block(BottomPlan plan, string of) =>
        new("What the tape says", of, "figures", null, Cautions.CheckBy(plan.Job.Hull.Panel));

    private static ListSheet Readings(BottomPlan plan, TapedHull taped)
    {
        LengthUnit unit = plan.Job.Units;
        return new(
            Block(plan, "reading by reading"),
            [
                $"{Judged(taped)} Lengths are {SheetWords.Unit(unit)}, on the face that the first layer lies on. LIMIT: by which a reading may differ from the table, 19 times in 20, {TapedWords.If}. Now: what a tape reads on the hull that is planked.",
            ],
            [
                new("reading", 36, false),
                new("side", 10, false),
                new("table", 11),
                new("read", 11),
                new("differs", 10),
                new("limit", 9),
                new("now", 11),
                new("", 22, false),
            ],
            [
                .. taped.Rows.Select(r =>
                    ImmutableArray.Create(
                        TapedWords.Of(r.Reading.Place),
                        TapedWords.SideOf(r.Reading.Place),
                        LengthText.PaperNumber(r.DrawnMm, unit),
                        LengthText.PaperNumber(r.Reading.Mm, unit),
                        TapedWords.Signed(r.OffMm, unit),
                        LengthText.PaperNumber(r.LimitMm, unit, RoundTo.Up),
                        LengthText.PaperNumber(taped.Tables is null ? r.DrawnMm : r.AfterMm, unit),
                        r.IsKept ? "" : "put aside: measure it again"
                    )
                ),
            ],
            false
        )
        {
            About = [.. taped.Rows.Select(r => TapedWords.About(plan.Job, r.Reading.Place))],
        };
    }

    private static string Judged(TapedHull taped) =>
        taped.Tables is null
            ? "The corrections are too wild to be planked to unasked, or no reading is left: planks are those of the table."
        : taped.Whole.IsWithin
            ? $"The readings go with the table as far as [trust] trusts it ({PlanWords.Count(taped.Whole.Readings, "reading")} kept)."
        : $"The readings lie further from the table than [trust] allows: all that it says of table and frames is widened, by {NumberText.Trimmed(Math.Ceiling(10 * Math.Sqrt(taped.Whole.Scale)) / 10, 1)} times.";

    private static ListSheet Cells(BottomPlan plan, TapedHull taped)
    {
        LengthUnit unit = plan.Job.Units;
        TapedCell[] moved = [.. taped.Cells.Where(c => LengthText.OnPaperMm(c.ByMm, unit) != 0)];
        return new(
            Block(plan, "the table as it is laid to"),
            [
                $"Numbers of the table that the readings move by as much as paper shows, {SheetWords.Unit(unit)}: keel, frames and stations, both sides together, as likely as table and tape make them. Within: how sure each is afterwards, 19 times in 20, {TapedWords.If}. The file of offsets is left as it is.",
            ],
            [
                new("side", 10, false),
                new("cell", 30, false),
                new("moved", 12),
                new("within", 12),
                new("", 30, false),
            ],
            [
                .. moved.Select(c =>
                    ImmutableArray.Create(
                        PlankWords.Of(c.Side),
                        c.Name,
                        TapedWords.Signed(c.ByMm, unit),
                        PlusMinus.Plain(Planking.Trust.TrustSpec.Within * c.AfterSigmaMm, unit),
                        c.IsWild ? "further than a frame a little out" : ""
                    )
                ),
            ],
            false
        )
        {
            About = [.. moved.Select(c => PlaceAlong.Cell(plan.Job, c.Name))],
        };
    }
}
