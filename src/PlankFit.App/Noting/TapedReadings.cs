using System.Collections.Immutable;
using PlankFit.Export.Checks;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Whole;
using PlankFit.Reading.AsBuilt;

namespace PlankFit.App.Noting;

/// <summary>What was read in the blanks of the check sheet, as rows for the file of what was measured.</summary>
/// <param name="Rows">Those that the hull can be adjusted to and that are not in the file yet.</param>
/// <param name="Told">Which are left out though a tape read them on the hull, and why.</param>
public sealed record TapedReadings(ImmutableArray<MeasuredEntry> Rows, ImmutableArray<string> Told)
{
    /// <param name="plan">With [trust], without which no reading of the sheet adjusts anything.</param>
    /// <param name="blanks">Of that plan's sheet.</param>
    /// <param name="last">What holds by the journal.</param>
    /// <param name="there">Marks of those that stand in the file: of them nothing more is asked.</param>
    public static TapedReadings Of(
        BottomPlan plan,
        ImmutableArray<BlankGroup> blanks,
        IEnumerable<ProgressTick> last,
        IReadOnlySet<string> there
    )
    {
        if (plan.Job.Trust is null)
        {
            return new([], []);
        }

        var sheet = new BlankSearch(blanks);
        ImmutableArray<MeasuredEntry>.Builder rows = ImmutableArray.CreateBuilder<MeasuredEntry>();
        List<string> told = [];
        foreach (ProgressTick tick in last.OrderBy(t => t.Seq))
        {
            if (tick is not { Blank: { IsOfTheHull: true } id, Value.Length: > 0 })
            {
                continue;
            }

            string mark = ProgressJournal.MarkOf(tick.Client, tick.N);
            if (there.Contains(mark))
            {
                continue;
            }

            var row = new MeasuredEntry(
                mark,
                [
                    id.What,
                    id.Where,
                    id.Side is { } side ? PlankWords.Of(side) : "",
                    MeasuredWriting.Value(tick.Value, plan.Job.WrittenIn),
                ]
            );
            CheckBlank? blank = sheet.Of(id, tick.ShouldMm);
            string? fault =
                id.What == TapePlace.WordOf(TapeKind.SeamLength) && blank is not { IsTakenUp: true }
                    ? blank is null
                        ? "no seam of the sheet is called so any more"
                        : null
                    : blank is not null && !BlankJudge.IsOfThisLayOut(blank, tick.ShouldMm)
                        ? "it was read to marks of another lay-out: tape it again"
                        : !MeasuredWriting.Holds(row)
                            ? "a name with a # in it cannot stand in the file"
                            : Refused(plan, row);
            if (fault is not null)
            {
                told.Add($"{id.What}, {id.Where}: {fault}");
            }
            else if (blank is not { IsTakenUp: false })
            {
                rows.Add(row);
            }
        }

        return new(rows.ToImmutable(), [.. told.Distinct()]);
    }

    /// <summary>What the reader of the file would say of that row.</summary>
    private static string? Refused(BottomPlan plan, MeasuredEntry row)
    {
        Job job = plan.Job;
        ImmutableArray<Finding> faults = MeasuredText
            .Read(
                MeasuredWriting.With(MeasuredWriting.Empty, [row], _ => false),
                "measured.csv",
                (job.WrittenIn, job.Units),
                job.Offsets,
                [],
                plan.PlankLayers.Count(),
                new(job.Hull.Panel, true)
            )
            .Findings;
        return faults.FirstOrDefault(f => f.Severity == Severity.Error)?.Message;
    }
}
