using PlankFit.App.Laying;
using PlankFit.App.Planning;
using PlankFit.App.Running;
using PlankFit.Export.Tables;
using PlankFit.Export.Taping;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Taping;

/// <summary>How sure every plank is, what to tape first, and which may be sawn now.</summary>
public static class TrustRun
{
    public static RunReport Run(
        RunRequest request,
        IProgress<PlanProgress> progress,
        Timings timings,
        CancellationToken stop
    )
    {
        var planned = PlannedJob.From(request.JobPath, progress, timings, stop);
        if (planned.Plan is not { } plan)
        {
            return planned.Faults!;
        }

        if (plan.Job.Trust is null || OtherPanelsOnly(plan))
        {
            return RunReport.Faults([
                new(
                    Severity.Error,
                    Path.GetFileName(request.JobPath),
                    plan.Job.Trust is null
                        ? "the job has no [trust]: add the line [trust], which takes the values that `plankfit help trust` shows, and say in it what you know better"
                        : "only a bottom is taped and adjusted, and this job planks none"
                ),
            ]);
        }

        TapeAdvice advice = timings.Time(
            "how the planks hang on the table, and what to tape",
            () => Advised.Of(plan)!
        );
        var planks = ListedTable.Of("lengths", () => TapingTables.Planks(plan.Job, advice));
        IReadOnlyList<string> written = timings.Time(
            "write what to tape",
            () =>
                WrittenFiles.Write(
                    request.Folder,
                    "trust",
                    [
                        MadeFiles.SingleSheets(
                            plan.Job,
                            BookSection.Of(
                                InBook.Check,
                                "tape-here-first",
                                "Tape here first",
                                () => TapingPages.Of(plan, advice)
                            )
                        ),
                        MadeFiles.File(
                            "to-tape.csv",
                            s => Csv.Write(TapingTables.Blanks(advice), s)
                        ),
                        .. MadeFiles.Csvs([planks]),
                    ],
                    progress,
                    timings,
                    stop
                )
        );
        return new(
            ExitCode.Done,
            plan.Taped?.Findings ?? [],
            [
                .. TapedWords.SawNow(plan, advice),
                .. advice.Verdicts.Select(v => FitWords.Of(v, plan.Job.Units)),
                .. advice.Wishes.Select((w, i) => TapedWords.Told(i + 1, w, plan.Job.Units)),
                $"{written.Count} files are in {request.Folder}: start with sheets/tape-here-first.pdf, and type what the tape says into to-tape.csv.",
            ],
            request.Json
                ? WrittenFiles.Text(s => Csv.Write(TapingTables.Planks(plan.Job, advice), s))
                : null
        )
        {
            First = NestTold.First(plan),
        };
    }

    private static bool OtherPanelsOnly(BottomPlan plan) => !plan.PlankLayers.Any();
}
