using PlankFit.App.Planning;
using PlankFit.App.Running;
using PlankFit.Export.Lists;
using PlankFit.Export.Summary;
using PlankFit.Export.Whole;
using PlankFit.Planking.Laying;

namespace PlankFit.App.Laying;

/// <summary>The main job: a job file in, everything that a builder needs to saw the planks out.</summary>
public static class LayRun
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

        plan = Planner.InBoards(plan, null, progress, timings, stop);
        bool searchEnded = plan.Nest is not null && stop.IsCancellationRequested;
        progress.Report(new("writing lists, drawings and patterns", 0));
        IReadOnlyList<string> written = timings.Time(
            "write all files",
            () =>
                WrittenFiles.Write(
                    request.Folder,
                    "lay",
                    LayFiles.Of(plan),
                    progress,
                    timings,
                    searchEnded ? CancellationToken.None : stop
                )
        );
        string? json = request.Json
            ? WrittenFiles.Text(s => PlankingJson.Write(OnPlanks.Of(plan), s))
            : null;
        return new(
            NestTold.Exit(plan),
            BeforeYouSaw.All(plan),
            [
                .. searchEnded ? [NestedPlan.Stopped] : (string[])[],
                .. PlanSummary.Of(plan).Lines(plan.Job.Units),
                .. NestTold.Lines(plan),
                $"{written.Count} files are in {request.Folder}: start with {MadeFiles.First}, then {MadeFiles.Book}.",
            ],
            json
        )
        {
            First = NestTold.First(plan),
            AllIn = MadeFiles.First,
        };
    }
}
