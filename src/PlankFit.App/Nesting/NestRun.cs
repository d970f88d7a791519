using System.Collections.Immutable;
using PlankFit.App.Laying;
using PlankFit.App.Planning;
using PlankFit.App.Running;
using PlankFit.Export.Stock;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Stock;

namespace PlankFit.App.Nesting;

/// <summary>The planks laid out in the boards on hand, and what the saw needs for it.</summary>
public static class NestRun
{
    /// <param name="stop">Once the search is on it ends it, and the best plan found is written.</param>
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

        if (plan.Job.Nest is null)
        {
            return RunReport.Faults([
                new(
                    Severity.Error,
                    Path.GetFileName(request.JobPath),
                    "the job names no stock: add [nest] with stock = \"stock.csv\", the boards on hand, or buy = \"yard.csv\", what may be bought"
                ),
            ]);
        }

        plan = Planner.InBoards(plan, null, progress, timings, stop);
        bool searchEnded = stop.IsCancellationRequested;
        IReadOnlyList<string> written = timings.Time(
            "write cut sheets and lists",
            () =>
                WrittenFiles.Write(
                    request.Folder,
                    "nest",
                    Files(plan),
                    progress,
                    timings,
                    searchEnded ? CancellationToken.None : stop
                )
        );
        return new(
            NestTold.Exit(plan),
            [
                .. plan.Findings.Where(f => f.Where == RackAfterSawing.About),
                .. plan.Nest?.Findings ?? [],
            ],
            [
                .. searchEnded ? [NestedPlan.Stopped] : (string[])[],
                .. NestTold.Lines(plan),
                $"{written.Count} files are in {request.Folder}: the cut sheets are in {MadeFiles.Book}, where all sheets are bound anew.",
            ],
            request.Json ? WrittenFiles.Text(s => NestJson.Write(plan, s)) : null
        )
        {
            First = NestTold.First(plan),
        };
    }

    /// <summary>What tells of the plan of cutting; book and workbook whole, so that nothing in them speaks of another plan.</summary>
    private static ImmutableArray<FileWork> Files(BottomPlan plan)
    {
        FeatureFiles all = LayFiles.All(plan),
            own = NestFiles.Of(plan);
        return
        [
            MadeFiles.BenchBook(plan.Job, all.Sheets),
            MadeFiles.BeforeYouSaw(plan.Job, all.Sheets),
            MadeFiles.AllTables(all.Tables),
            .. own.Files,
            .. MadeFiles.SingleSheets(plan.Job, own.Sheets),
            .. MadeFiles.Csvs(own.Tables),
        ];
    }
}
