using System.Collections.Immutable;
using PlankFit.App.Laying;
using PlankFit.App.Planning;
using PlankFit.App.Running;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Parts;

/// <summary>One part of a plan that has a command of its own: the keel, the cloth, the glue.</summary>
/// <param name="Name">As the command is called: what an earlier run of it wrote is known by it.</param>
/// <param name="Writing">The work of writing its files, for the timings.</param>
/// <param name="Missing">What a job that does not ask for the part is told to add.</param>
/// <param name="Of">The part; null where the job does not ask for it.</param>
internal sealed record PartOfPlan<T>(
    string Name,
    string Writing,
    string Missing,
    Func<BottomPlan, T?> Of
)
    where T : class
{
    public required Func<BottomPlan, FeatureFiles> Files { get; init; }

    public required Func<T, ImmutableArray<Finding>> Findings { get; init; }

    /// <summary>What the terminal is told of it.</summary>
    public required Func<Job, T, IEnumerable<string>> Lines { get; init; }

    /// <summary>The sheet to begin with, and what is said where nothing was written.</summary>
    public required (string File, string Else) StartWith { get; init; }

    public required Action<Job, T, Stream> Json { get; init; }
}

/// <summary>Plans a job and writes the files of one part of it.</summary>
internal static class PartRun
{
    public static RunReport Of<T>(
        PartOfPlan<T> part,
        RunRequest request,
        IProgress<PlanProgress> progress,
        Timings timings,
        CancellationToken stop
    )
        where T : class
    {
        var planned = PlannedJob.From(request.JobPath, progress, timings, stop);
        if (planned.Plan is not { } plan)
        {
            return planned.Faults!;
        }

        if (part.Of(plan) is not { } found)
        {
            return RunReport.Faults([
                new(Severity.Error, Path.GetFileName(request.JobPath), part.Missing),
            ]);
        }

        FeatureFiles files = part.Files(plan);
        IReadOnlyList<string> written = timings.Time(
            part.Writing,
            () =>
                WrittenFiles.Write(
                    request.Folder,
                    part.Name,
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
            // What was said of work that is done already is of this part too, and stands with the whole plan alone.
            [
                .. plan.Findings.Where(PlannedJob.IsOfProgress),
                .. part.Findings(found).Where(f => !PlannedJob.IsOfProgress(f)),
            ],
            [
                .. part.Lines(plan.Job, found),
                written.Count == 0
                    ? part.StartWith.Else
                    : $"{written.Count} files are in {request.Folder}: start with {part.StartWith.File}.",
            ],
            request.Json ? WrittenFiles.Text(s => part.Json(plan.Job, found, s)) : null
        )
        {
            First = NestTold.First(plan),
        };
    }
}
