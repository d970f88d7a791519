using PlankFit.App.Laying;
using PlankFit.App.Planning;
using PlankFit.App.Running;
using PlankFit.Export.Glue;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Laying;

namespace PlankFit.App.Gluing;

/// <summary>Resin, batches and sessions alone.</summary>
public static class GlueRun
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

        if (plan.Glue is not { } glue)
        {
            return RunReport.Faults([
                new(
                    Severity.Error,
                    Path.GetFileName(request.JobPath),
                    "the job names neither resin nor glue: add [resin] or [glue] with its ratio, densities, pot, film and sandable as on its data sheet; see plankfit help glue"
                ),
            ]);
        }

        FeatureFiles files = GlueFiles.Of(plan);
        IReadOnlyList<string> written = timings.Time(
            "write the gluing files",
            () =>
                WrittenFiles.Write(
                    request.Folder,
                    "glue",
                    [
                        .. files.Files,
                        .. files.Sheets.Select(s => MadeFiles.SingleSheets(plan.Job, s)),
                        .. MadeFiles.Csvs(files.Tables),
                    ],
                    progress,
                    timings,
                    stop
                )
        );
        return new(
            ExitCode.Done,
            glue.Findings,
            [
                .. glue.Totals.Select(t =>
                    $"{t.Mix.Name}, {GlueWords.Ratio(t.Mix.Ratio)}: {GlueWords.Range(t.Likely, plan.Job.Units)} likely; order {GlueWords.Order(t.Order.ResinKg, plan.Job.Units)} of resin and {GlueWords.Order(t.Order.HardenerKg, plan.Job.Units)} of hardener."
                ),
                .. glue.Stages.Where(s => !s.Batches.IsEmpty).Select(Line),
                $"{written.Count} files are in {request.Folder}: start with sheets/gluing.pdf.",
            ],
            request.Json ? WrittenFiles.Text(s => GlueJson.Write(plan.Job, glue, s)) : null
        )
        {
            First = NestTold.First(plan),
        };
    }

    private static string Line(GlueStage stage)
    {
        int planks = stage.Batches.Sum(b => b.Planks.Length);
        return $"{stage.Layer}: {(planks > 0 ? PlanWords.Count(planks, "plank") : "cloth")} in {stage.Batches.Length} {(stage.Batches.Length == 1 ? "batch" : "batches")}, {GlueWords.When(stage.Batches.Min(b => b.MixAt))} to {GlueWords.When(stage.Batches.Max(b => b.Clocks.DownAt))}.";
    }
}
