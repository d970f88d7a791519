using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Taping;

/// <summary>Tables of what to tape.</summary>
public static class TapingTables
{
    /// <summary>
    /// The rows of measured.csv to type into: what is to be read again once, what is new twice; a row left empty counts as not read.
    /// </summary>
    public static Table Blanks(TapeAdvice advice) =>
        TableOf.Build<TapePlace>(
            "to tape",
            [
                new("what", 14, p => p.What),
                new("where", 26, p => p.Where),
                new("side", 10, p => p.Side is { } side ? PlankWords.Of(side) : ""),
                new("value", 12, _ => ""),
            ],
            advice.Again.Concat(advice.Wishes.SelectMany(w => new[] { w, w })).Select(w => w.Place)
        );

    /// <summary>What was read, against the hull as drawn and as adjusted.</summary>
    public static Table Readings(Job job, TapedHull taped) =>
        TableOf.Build<TapedRow>(
            "taped",
            [
                new("what", 14, r => r.Reading.Place.What),
                new(
                    "where",
                    26,
                    r => new Tables.TableCell(r.Reading.Place.Where, null)
                    {
                        AtMm = TapedWords.XOf(job, r.Reading.Place),
                    }
                ),
                new("side", 10, r => TapedWords.SideOf(r.Reading.Place)),
                new("table", 12, r => LengthText.ForPaper(r.DrawnMm, job.Units)),
                new("read", 12, r => LengthText.ForPaper(r.Reading.Mm, job.Units)),
                new("limit", 12, r => LengthText.ForPaper(r.LimitMm, job.Units, RoundTo.Up)),
                new("kept", 8, r => r.IsKept ? "yes" : "no"),
                new("table mm", 11, r => r.DrawnMm, 2),
                new("read mm", 11, r => r.Reading.Mm, 2),
                new("adjusted mm", 11, r => r.AfterMm, 2),
            ],
            taped.Rows
        );

    /// <summary>How sure every plank's length is.</summary>
    public static Table Planks(Job job, TapeAdvice advice) =>
        TableOf.Build<PlankSureness>(
            "planks' lengths",
            [
                new("plank", 10, p => p.Id.ToString()),
                new(
                    $"length within, 19 times in 20, {TapedWords.If}",
                    18,
                    p => PlusMinus.Plain(p.WithinMm, job.Units)
                ),
                new("once all is taped", 18, p => PlusMinus.Plain(p.WishedMm, job.Units)),
                new(
                    "left long",
                    12,
                    p => p.LeftLongMm is { } mm ? LengthText.ForPaper(mm, job.Units) : null
                ),
                new(
                    "saw",
                    10,
                    p =>
                        p.IsDone ? "done"
                        : p.IsSureEnough ? "now"
                        : "not yet"
                ),
                new("within mm", 11, p => p.WithinMm, 1),
            ],
            advice.Planks.OrderBy(p => p.Id)
        );
}
