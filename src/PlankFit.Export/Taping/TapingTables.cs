using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Taping;

/// <summary>Tables of what to tape.</summary>
public static class TapingTables
{
    /// <summary>The rows of measured.csv to type into, each twice; a row left empty counts as not read.</summary>
    public static Table Blanks(TapeAdvice advice) =>
        TableOf.Build<TapePlace>(
            "to tape",
            [
                new("what", 14, p => p.What),
                new("where", 26, p => p.Where),
                new("side", 10, p => p.Side is { } side ? PlankWords.Of(side) : ""),
                new("value", 12, _ => ""),
            ],
            advice.Wishes.SelectMany(w => new[] { w.Place, w.Place })
        );

    /// <summary>How sure every plank's length is.</summary>
    public static Table Planks(Job job, TapeAdvice advice) =>
        TableOf.Build<PlankSureness>(
            "planks' lengths",
            [
                new("plank", 10, p => p.Id.ToString()),
                new("length within, 19 in 20", 18, p => TapedWords.Within(p.WithinMm, job.Units)),
                new("once all is taped", 18, p => TapedWords.Within(p.WishedMm, job.Units)),
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
